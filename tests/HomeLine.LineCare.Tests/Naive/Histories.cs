using System.Collections.Immutable;
using CsCheck;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>A patient, a policy book and the moment of asking.</summary>
internal sealed record History(PatientCare Care, PolicyBook Book, Instant Now)
{
    public override string ToString() => $"now {Now} in {Care.Zone}, care from {Care.CareStartedOn}, born {Care.BornOn}, {Care.Risks}\n"
        + string.Join('\n', Care.Lines.Select(l => $"  {l.Kind} {l.Id} {string.Join(',', l.Lumens)} {l.Securement} healed {l.ExitSiteHealed} tip {l.TipConfirmed} in {l.InsertedOn} out {l.OutsideLengthCm}"))
        + Told("event", Care.Events.Select(e => $"{e.Id} {e.Line} {e.Kind} {e.Performed} rec {e.RecordedAt} {e.Performer} {e.PerformerName} {e.Certainty} {e.Dressing} con[{string.Join(',', e.ConnectorsChanged)}] use[{string.Join(',', e.LumensUsed)}] {e.OutsideLengthCm} seal {e.Seal} order {e.Order} voids {e.Voids}"))
        + Told("infusion", Care.Infusions.Select(i => i.ToString()))
        + Told("order", Care.Orders.Select(o => $"{o.Id} {o.Line} {o.Kind} {o.Item} every {o.EveryDays} {o.StartsOn}..{o.EndsOn} confirmed {o.Confirmed} [{string.Join(',', o.Weekdays)}] [{string.Join(',', o.Dates)}]"))
        + Told("exception", Care.Exceptions.Select(x => x.ToString()))
        + Told("validated", Care.Caregivers.Select(c => c.ToString()))
        + Told("outside", Care.Outside.Select(o => $"{o} [{string.Join(',', o.Items)}]"))
        + Told("hold", Care.Holds.Select(h => h.ToString()))
        + Told("rule", Book.Rules.Skip(PolicyBook.Default.Rules.Length).Select(r => r.ToString()));

    private static string Told(string what, IEnumerable<string> lines) => string.Concat(lines.Select(line => $"\n  {what} {line}"));
}

/// <summary>Thousands of patients nobody would make up: every kind of device and event, clocks that change, leap days, journeys, policies that move.</summary>
internal static class Histories
{
    private const int Days = 48;

    private static readonly PatientId Patient = new("P1");
    private static readonly string[] Letters = ["A", "B", "C"];

    /// <summary>Places whose clocks change at two, at midnight, by half an hour, or never.</summary>
    private static readonly DateTimeZone[] Places =
    [
        .. new[] { "America/New_York", "America/Phoenix", "Europe/London", "Australia/Sydney", "America/Santiago", "Asia/Beirut", "Australia/Lord_Howe", "Asia/Kathmandu" }
            .Select(id => DateTimeZoneProviders.Tzdb[id]),
    ];

    /// <summary>Days around which the histories are told: changes of clocks north and south, the leap day, the turn of the year.</summary>
    private static readonly LocalDate[] Turns =
    [
        new(2027, 3, 14), new(2027, 11, 7), new(2027, 3, 28), new(2026, 10, 4), new(2027, 4, 4), new(2027, 9, 5), new(2028, 2, 29), new(2027, 12, 31), new(2027, 6, 9),
    ];

    private static readonly (string Id, int Low, int High, string Unit)[] Rules =
    [
        ("dressing.film.max", 1, 10, "days"), ("dressing.film.min", 0, 8, "days"), ("dressing.gauze.max", 1, 3, "days"), ("dressing.gauze.max", 24, 60, "hours"),
        ("connector.intermittent.max", 3, 9, "days"), ("connector.intermittent.min", 48, 120, "hours"), ("port.needle.max", 4, 9, "days"),
        ("port.flush.max", 14, 84, "days"), ("port.flush.min", 7, 30, "days"), ("flush.lumen.max", 1, 8, "days"), ("set.continuous.max", 48, 168, "hours"),
        ("dressing.antiseptic.max", 3, 9, "days"),
        ("dressing.gauzeunderfilm.max", 1, 7, "days"), ("dressing.first.film.max", 1, 7, "days"),
        ("dressing.first.gauze.max", 1, 2, "days"), ("dressing.gauze.port.max", 24, 72, "hours"), ("dressing.gauze.wings.countsasfilm", 0, 1, "switch"),
        ("connector.continuous.max", 48, 168, "hours"),
        ("connector.pn.max", 1, 7, "days"), ("set.continuous.min", 24, 96, "hours"), ("set.pn.max", 12, 36, "hours"),
        ("sitecheck.max", 1, 9, "days"), ("calendar.dayofchange.isdayone", 0, 1, "switch"), ("seal.b1.max", 2, 12, "hours"), ("seal.b2.max", 0, 1, "days"),
        ("seal.b3.max", 6, 30, "hours"), ("removal.waiver", 0, 3, "days"), ("nursecheck.unverified.max", 0, 2, "days"), ("length.step", 1, 2, "cm"),
        ("labs.early", 0, 4, "days"), ("connector.compromised.max", 0, 1, "days"), ("dressing.adhesiveinjury.early", 0, 2, "days"), ("horizon", 0, 20, "days"),
    ];

    private static readonly CareItem[] IntervalItems =
        [CareItem.Dressing, CareItem.Dressing, CareItem.Connector, CareItem.PortNeedle, CareItem.PortFlush, CareItem.LumenFlush, CareItem.Set, CareItem.SiteCheck];

    /// <summary>The first dozen rules, which most clocks run on, come up most often.</summary>
    private static readonly Gen<(string Id, int Low, int High, string Unit)> SomeRule = Gen.Frequency(
        (3, Gen.OneOf(Rules[..12])), (1, Gen.OneOf(Rules)));

    private static readonly Gen<SealFinding> Findings = Gen.Frequency(
        (2, Gen.Const(SealFinding.EdgeLifted)), (2, Gen.Const(SealFinding.OuterCornerOnly)), (1, Gen.Const(SealFinding.Off)), (1, Gen.Int[0, 127].Select(found => (SealFinding)found)));

    private static readonly Gen<LineEventKind> Kinds = Gen.Frequency(
        (8, Gen.Const(LineEventKind.DressingChanged)), (3, Gen.Const(LineEventKind.SealReported)), (3, Gen.Const(LineEventKind.PortAccessed)),
        (2, Gen.Const(LineEventKind.PortDeaccessed)), (4, Gen.Const(LineEventKind.SetChanged)), (4, Gen.Const(LineEventKind.ConnectorChanged)),
        (10, Gen.OneOf(Enum.GetValues<LineEventKind>().Where(kind => kind is not (LineEventKind.Removed or LineEventKind.Exchanged)).ToArray())),
        (1, Gen.OneOf(LineEventKind.Removed, LineEventKind.Exchanged)));

    private static readonly Gen<ImmutableArray<string>> Lumens = Gen.OneOf<ImmutableArray<string>>([], ["A"], ["A"], ["B"], ["A", "B"], ["C"]);

    private static readonly Gen<LocalDate?> MaybeDay = Gen.Select(Gen.Int[0, 3], Gen.Int[0, Days + 30], (known, day) => known == 0 ? (LocalDate?)null : Day(day));

    private static readonly Gen<bool> Seldom = Gen.Frequency((4, Gen.Const(false)), (1, Gen.Const(true)));

    private static readonly Gen<Line> Lines = Gen.Select(
        Gen.OneOf(LineKind.Picc, LineKind.Picc, LineKind.Midline, LineKind.Tunneled, LineKind.Port, LineKind.Port, LineKind.DialysisCatheter), Gen.Int[1, 3],
        Gen.Enum<SecurementKind>(), Gen.Bool, Seldom, Gen.Int[0, 4], MaybeDay, Seldom,
        (kind, lumens, securement, healed, unconfirmed, length, inserted, occluded) => new Line
        {
            Id = new LineId("?"),
            Patient = Patient,
            Kind = kind,
            Lumens = [.. Letters.Take(kind == LineKind.Port ? 1 : lumens).Select(letter => new Lumen(letter, occluded && letter == "A"))],
            Securement = securement,
            ExitSiteHealed = healed && kind == LineKind.Tunneled,
            TipConfirmed = !unconfirmed,
            InsertedOn = inserted,
            InsertedLengthCm = 40,
            OutsideLengthCm = length == 0 ? null : length,
        });

    /// <summary>When it was done: exactly at home, exactly on a journey, on some day, or nobody knows. Half of the moments are midnight, six,
    /// noon and eighteen, so that some coincide.</summary>
    private static readonly Gen<(int Known, int Minute, int EnteredAfter, DateTimeZone Away)> Times =
        Gen.Select(Gen.Int[0, 9], Gen.OneOf(Gen.Int[0, (Days * 24 * 60) - 1], Gen.Int[0, (Days * 4) - 1].Select(sixth => sixth * 6 * 60)), Gen.Frequency((3, Gen.Const(0)), (2, Gen.Int[0, 90])), Gen.OneOf(Places));

    private static readonly Gen<LineEvent> Entries = Gen.Select(
        Gen.Select(Kinds, Gen.Frequency((3, Gen.Const(0)), (1, Gen.Const(1)))), Lumens, Lumens,
        Gen.Select(Gen.Bool, Gen.Enum<DressingKind>()), Gen.Frequency((3, Gen.Const(Certainty.SeenByOurNurse)), (1, Gen.Const(Certainty.WrittenOnDressing)), (2, Gen.Enum<Certainty>())),
        Gen.Select(Gen.Frequency((3, Gen.Const(PerformerKind.Nurse)), (2, Gen.Enum<PerformerKind>())), Gen.OneOf("", "spouse", "son")),
        Gen.Select(Findings, Gen.Int[0, 9]), Gen.OneOf(null, "O0", "O1", "O2"),
        (what, connectors, used, dressing, certainty, who, found, order) => new LineEvent
        {
            Id = new EventId("?"),
            Patient = Patient,
            Line = new LineId($"P1-{what.Item2 + 1}"),
            Kind = what.Item1,
            RecordedAt = default,
            Certainty = certainty,
            Performer = who.Item1,
            PerformerName = who.Item2,
            Dressing = dressing.Item1 ? dressing.Item2 : null,
            ConnectorsChanged = connectors,
            LumensUsed = used,
            OutsideLengthCm = found.Item2 == 0 ? 38.5m : found.Item2 < 5 ? found.Item2 : null,
            Seal = found.Item1,
            Order = order,
        });

    private static readonly Gen<(LineEvent, (int Known, int Minute, int EnteredAfter, DateTimeZone Away), int Voids)[]> Ledgers =
        Gen.Select(Entries, Times, Gen.Frequency((6, Gen.Const(-1)), (1, Gen.Int[0, 15]))).Array[0, 18];

    private static readonly Gen<Infusion> Infusions = Gen.Select(
        Gen.Int[1, 2], Gen.Int[0, 1], Gen.Enum<InfusionKind>(), Gen.Enum<PerformerKind>(), Seldom,
        (line, lumen, kind, by, never) => new Infusion(Patient, new LineId($"P1-{line}"), Letters[lumen], kind, "therapy", by, never));

    private static readonly Gen<CareOrder> Orders = Gen.Select(
        Gen.Frequency((1, Gen.Const(OrderKind.Interval)), (1, Gen.Enum<OrderKind>())), Gen.OneOf(IntervalItems), Gen.Int[0, 2],
        Gen.Select(Gen.Int[-40, Days + 20], Gen.Int[-5, 90]), Gen.Select(Gen.Int[0, 16], Seldom), Gen.Bool,
        Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, 127])), MaybeDay.Array[0, 3],
        (kind, item, line, valid, every, confirmed, weekdays, dates) => new CareOrder
        {
            Id = "?",
            Patient = Patient,
            Kind = kind,
            Item = item,
            Line = line == 0 ? null : new LineId($"P1-{line}"),
            StartsOn = Day(valid.Item1),
            EndsOn = valid.Item2 > 60 ? null : Day(valid.Item1 + valid.Item2),
            EveryDays = every.Item2 ? null : every.Item1,
            Confirmed = confirmed,
            Weekdays = kind == OrderKind.Interval ? [] : [.. Enumerable.Range(1, 7).Where(d => (weekdays & (1 << (d - 1))) != 0).Select(d => (IsoDayOfWeek)d)],
            Dates = kind == OrderKind.Interval ? [] : [.. dates.OfType<LocalDate>().Distinct()],
            Practitioner = "Practitioner A",
        });

    private static readonly Gen<CareException> Exceptions = Gen.Select(SomeRule, Gen.Int[0, 1000], Gen.Int[0, Days + 20], (rule, value, through) =>
        new CareException(Patient, rule.Id, Between(rule, value), "Clinical manager", Day(through), "skin"));

    private static readonly Gen<PolicyRule> Versions = Gen.Select(SomeRule, Gen.Int[0, 1000], Gen.Int[-10, Days + 20], Seldom, (rule, value, from, shipped) =>
        new PolicyRule(rule.Id, Between(rule, value), rule.Unit, Day(from), shipped ? PolicyLevel.Default : PolicyLevel.Agency, RuleStanding.OwnDefault, "our own default"));

    private static readonly Gen<CaregiverValidation> Validations = Gen.Select(
        Gen.OneOf("spouse", "son"), Gen.OneOf(ClockItems()), Gen.Int[0, Days + 60], Gen.Int[0, 2],
        (person, item, through, line) => new CaregiverValidation(Patient, person, item, Day(through), line == 0 ? null : new LineId($"P1-{line}")));

    private static readonly Gen<(OutsideCare, int)> Outside = Gen.Select(Gen.Int[1, 2], Gen.Int[0, Days], Gen.Int[-48, 400], Gen.OneOf(ClockItems()).Array[1, 4], (line, on, hours, items) =>
        (new OutsideCare(Patient, new LineId($"P1-{line}"), Day(on), default, "the clinic", [.. items]), hours));

    private static readonly Gen<Hold> Holds = Gen.Select(Gen.Int[0, Days], MaybeDay, (from, through) => new Hold(Patient, Day(from), through, "away"));

    /// <summary>Any patient under any book at any moment.</summary>
    public static readonly Gen<History> Any = Gen.Select(
        Gen.Select(Gen.OneOf(Places), Gen.OneOf(Turns), Gen.Int[Days * 8 * 60, (Days * 24 * 60) - 1], Gen.Int[0, 90]), Lines.Array[1, 2], Ledgers, Infusions.Array[0, 2],
        Gen.Select(Orders.Array[0, 4], Exceptions.Array[0, 2], Versions.Array[0, 6]),
        Gen.Select(Validations.Array[0, 3], Outside.Array[0, 1], Holds.Array[0, 1]),
        Gen.Select(Gen.Frequency((2, Gen.Const(0)), (1, Gen.Int[0, 63])), Gen.Int[0, 3], Gen.Int[0, 420]), Gen.Bool,
        (when, lines, ledger, infusions, rules, people, patient, aboutOne) => Told(when, lines, ledger, infusions, rules, people, patient, aboutOne));

    private static CareItem[] ClockItems() => Enum.GetValues<CareItem>();

    /// <summary>Days are drawn as offsets and moved to a turn of the calendar afterwards.</summary>
    private static LocalDate Day(int offset) => new LocalDate(2001, 1, 1).PlusDays(offset);

    private static decimal Between((string Id, int Low, int High, string Unit) rule, int value) => rule.Low + (value % (rule.High - rule.Low + 1));

    private static History Told(
        (DateTimeZone Zone, LocalDate Turn, int NowMinute, int StartedBefore) when, Line[] lines,
        (LineEvent, (int Known, int Minute, int EnteredAfter, DateTimeZone Away), int Voids)[] ledger, Infusion[] infusions,
        (CareOrder[] Orders, CareException[] Exceptions, PolicyRule[] Versions) rules,
        (CaregiverValidation[] Validations, (OutsideCare, int)[] Outside, Hold[] Holds) people, (int Risks, int Age, int Young) patient, bool aboutOne)
    {
        var first = when.Turn.PlusDays(-Days / 2);
        LocalDate Move(LocalDate day) => first.PlusDays(Period.DaysBetween(new LocalDate(2001, 1, 1), day));
        LocalDate? MoveAny(LocalDate? day) => day is { } known ? Move(known) : null;
        Instant At(int minute) => when.Zone.AtStartOfDay(first).ToInstant() + Duration.FromMinutes(minute);
        var now = At(when.NowMinute);
        var care = new PatientCare
        {
            Patient = Patient,
            Zone = when.Zone,
            CareStartedOn = first.PlusDays(-when.StartedBefore),
            BornOn = patient.Age == 0 ? null : patient.Age == 1 ? first.PlusDays(-patient.Young) : new LocalDate(1950, 2, 28),
            Risks = (RiskFactors)patient.Risks,
            Lines = [.. lines.Select((line, i) => line with { Id = new LineId($"P1-{i + 1}"), InsertedOn = MoveAny(line.InsertedOn) })],
            Events = [.. ledger.Select((e, i) => Entry(e.Item1, e.Item2, i, e.Voids, lines, when.Zone, At))],
            Infusions = [.. infusions.DistinctBy(i => (i.Line, i.Lumen))],
            Orders = [.. rules.Orders.Select((o, i) => o with { Id = $"O{i}", Item = aboutOne ? rules.Orders[0].Item : o.Item, Line = aboutOne ? null : o.Line, StartsOn = Move(o.StartsOn), EndsOn = MoveAny(o.EndsOn), Dates = [.. o.Dates.Select(Move)] })],
            Exceptions = [.. rules.Exceptions.Select(x => x with { Through = Move(x.Through) })],
            Caregivers = [.. people.Validations.Select(v => v with { ValidThrough = Move(v.ValidThrough) })],
            Outside = [.. people.Outside.Select(o => o.Item1 with { On = Move(o.Item1.On), ReportBy = when.Zone.AtStartOfDay(Move(o.Item1.On)).ToInstant() + Duration.FromHours(o.Item2) })],
            Holds = [.. people.Holds.Select(h => h with { From = Move(h.From), Through = MoveAny(h.Through) })],
        };
        var versions = rules.Versions.Select(v => v with { EffectiveFrom = Move(v.EffectiveFrom) }).DistinctBy(v => (v.Id, v.Level, v.EffectiveFrom));
        return new History(care, PolicyBook.Default.With(versions), now);
    }

    private static LineEvent Entry(
        LineEvent entry, (int Known, int Minute, int EnteredAfter, DateTimeZone Away) time, int number, int voids, Line[] lines, DateTimeZone zone, Func<int, Instant> at)
    {
        var moment = at(time.Minute);
        CareMoment? performed = time.Known switch
        {
            0 => null,
            1 => CareMoment.SometimeOn(moment.InZone(zone).Date),
            2 => CareMoment.Exactly(moment, time.Away),
            _ => CareMoment.Exactly(moment, zone),
        };
        var line = lines.Length == 1 ? 0 : entry.Line!.Value.Value[^1] - '1';
        var isPort = lines[line].Kind == LineKind.Port;
        return entry with
        {
            Id = new EventId($"E{number:00}"),
            Line = IsOfThePatient(entry.Kind) ? null : new LineId($"P1-{line + 1}"),
            Kind = isPort ? entry.Kind : entry.Kind switch
            {
                LineEventKind.PortAccessed => LineEventKind.DressingChanged,
                LineEventKind.PortDeaccessed => LineEventKind.Flushed,
                var kind => kind,
            },
            Performed = performed,
            RecordedAt = moment + Duration.FromHours(time.EnteredAfter),
            Voids = voids >= 0 && voids != number ? new EventId($"E{voids:00}") : null,
        };
    }

    private static bool IsOfThePatient(LineEventKind kind) =>
        kind is LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome or LineEventKind.Recertified;
}
