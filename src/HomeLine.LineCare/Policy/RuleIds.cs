namespace HomeLine.LineCare.Policy;

/// <summary>The ids of the policy values this room reads. The shipped policy holds every one of them.</summary>
internal static class RuleIds
{
    public const string DayOfChangeIsDayOne = "calendar.dayofchange.isdayone";
    public const string AdhesiveInjuryEarly = "dressing.adhesiveinjury.early";
    public const string FirstFilm = "dressing.first.film.max";
    public const string FirstGauze = "dressing.first.gauze.max";
    public const string FirstOpens = "dressing.first.min";
    public const string Film = "dressing.film";
    public const string AntisepticFilm = "dressing.antiseptic";
    public const string Gauze = "dressing.gauze";
    public const string GauzeUnderFilm = "dressing.gauzeunderfilm";
    public const string GauzeOnPort = "dressing.gauze.port";
    public const string WingsGauzeCountsAsFilm = "dressing.gauze.wings.countsasfilm";
    public const string ConnectorIntermittent = "connector.intermittent";
    public const string ConnectorContinuous = "connector.continuous";
    public const string ConnectorNutrition = "connector.pn";
    public const string ConnectorCompromised = "connector.compromised.max";
    public const string ConnectorCompromisedTarget = "connector.compromised.target";
    public const string SetContinuous = "set.continuous";
    public const string SetIntermittent = "set.intermittent.max";
    public const string SetNutrition = "set.pn.max";
    public const string SetLipid = "set.lipid.max";
    public const string SetBlood = "set.blood.max";
    public const string PortNeedle = "port.needle";
    public const string PortFlush = "port.flush";
    public const string LumenFlush = "flush.lumen";
    public const string SecurementWithDressing = "securement.adhesive.withdressing";
    public const string LengthWithDressing = "length.withdressing";
    public const string LengthStep = "length.step";
    public const string LengthShortening = "length.shortening";
    public const string SiteCheck = "sitecheck";
    public const string LabsEarly = "labs.early";
    public const string RecertificationLast = "recertification.max";
    public const string RecertificationFirst = "recertification.first";
    public const string ValidationLife = "validation.caregiver.life";
    public const string ValidationEarly = "validation.caregiver.early";
    public const string NurseCheck = "nursecheck.unverified.max";
    public const string RemovalCheck = "removal.sitecheck";
    public const string RemovalWaiver = "removal.waiver";
    public const string SealTopTarget = "seal.b1.target";
    public const string SealTop = "seal.b1.max";
    public const string SealMiddleTarget = "seal.b2.target";
    public const string SealMiddle = "seal.b2.max";
    public const string SealLowTarget = "seal.b3.target";
    public const string SealLow = "seal.b3.max";
    public const string SealInfantAge = "seal.raise.infant.age";
    public const string SealTunneledAge = "seal.raise.tunneled.age";
    public const string ChlorhexidineAge = "chlorhexidine.age.min";
    public const string WeekStart = "frequency.weekstart";
    public const string HorizonDays = "horizon";
    public const string OutsideLengthMost = "length.outside.max";
    public const string RemovedLengthMost = "length.removed.max";
    public const string GirthMost = "girth.max";
    public const string GirthRise = "girth.rise";
    public const string MidlineDwell = "midline.dwell.review";
    public const string HealedAfter = "dressing.none.healed.after";
    public const string ConnectorOftenCount = "connector.often.count";
    public const string ConnectorOftenWithin = "connector.often.within";
    public const string SealMerge = "seal.report.merge";
    public const string ExceptionLife = "exception.life.max";
    public const string VerbalOrderSignature = "order.verbal.signature";
    public const string InitialVisit = "initialvisit.max";
    public const string Assessment = "assessment.max";
    public const string Resumption = "resumption.max";
    public const string ResumptionStay = "resumption.stay.min";
    public const string FirstDoseBefore = "firstdose.before.min";
    public const string FirstDoseAfter = "firstdose.after.min";
    public const string CountEndDay = "count.endday";
    public const string CountIdlePort = "count.idleport";
    public const string FeverCall = "fever.call";
    public const string DoseTolerance = "dose.tolerance";
    public const string DrawToDrop = "specimen.drawtodrop.max";
    public const string ScreenAdultAge = "screen.adult.age";

    /// <summary>The notices before an order ends, the longest first.</summary>
    public static string[] OrderNotices => ["order.notice.first", "order.notice.second", "order.notice.third", "order.notice.last"];

    /// <summary>Id of the ceiling of a pair.</summary>
    public static string Max(string pair) => string.Concat(pair, ".max");

    /// <summary>Id of the floor of a pair.</summary>
    public static string Min(string pair) => string.Concat(pair, ".min");
}
