using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

internal sealed partial class Desk
{
    private void ReadLine(WallChart chart)
    {
        var line = chart.Line.Id.Value;
        if (chart.Line.Kind == LineKind.DialysisCatheter)
        {
            _locks.Add($"{line} ");
            return;
        }

        if (chart.CameOut is { } removal)
        {
            ReadRemoval(chart, removal);
            return;
        }

        if (chart.Line.Kind == LineKind.Port) ReadPort(chart);
        else ReadExitSite(chart);
        ReadSets(chart);
        if (chart.Unverified is { } care) ReadUnverified(chart, care);
        ReadLocks(chart);
        ReadLength(chart);
        ReadMidline(chart);
    }

    /// <summary>A midline is counted day by day; at the days of policy somebody is asked.</summary>
    private void ReadMidline(WallChart chart)
    {
        if (chart.Line.Kind != LineKind.Midline) return;
        var placed = chart.PlacedBy?.Performed?.Date ?? chart.Line.InsertedOn;
        if (placed is { } day && _today >= WallCalendar.DaysOn(day, (int)_rules.Value("midline.dwell.review", _today)))
            _questions.Add($"{chart.Line.Id} {DecisionCodes.MidlineDwell}");
    }

    private void ReadExitSite(WallChart chart)
    {
        var healed = chart.Line is { Kind: LineKind.Tunneled, ExitSiteHealed: true } && chart.Cover is null or DressingKind.None
            && chart.SealReports.Count == 0 && !chart.Dressing.Lost;
        if (healed) _found.Add(Window(CareItem.SiteCheck, chart, null, chart.Look, "sitecheck.max", "sitecheck.min", Nurse));
        else ReadDressing(chart);
        foreach (var lumen in chart.Lumens.Where(lumen => !lumen.Occluded))
        {
            ReadConnector(chart, lumen);
            if (!_file.Infusions.Any(i => i.Line == chart.Line.Id && i.Lumen == lumen.Letter))
                _found.Add(Window(CareItem.LumenFlush, chart, lumen.Letter, lumen.Flush, "flush.lumen.max", "flush.lumen.min"));
        }
    }

    private void ReadDressing(WallChart chart)
    {
        Finding dressing;
        if (chart.Cover == DressingKind.None && chart.Dressing.IsKnown)
        {
            _questions.Add($"{chart.Line.Id} {DecisionCodes.NoDressing}");
            var bareSince = chart.Dressing.When.Date;
            dressing = Days(CareItem.Dressing, chart.Line.Id.Value, bareSince, bareSince, OwnerOf(CareItem.Dressing, chart.Line.Id, bareSince),
                chart.Dressing.By!.Id.Value, "seal.b2.max") with
            { Standing = WindowStanding.CutShort };
        }
        else
        {
            var rule = DressingRule(chart);
            int? opensBefore = _file.Risks.HasFlag(RiskFactors.AdhesiveInjury) ? (int)_rules.Value("dressing.adhesiveinjury.early", _today) : null;
            dressing = BrokenSeal(chart, Window(CareItem.Dressing, chart, null, chart.Dressing, rule.Max, rule.Min, null, opensBefore));
        }

        _found.Add(dressing);
        if (chart.Line.Securement == SecurementKind.Adhesive)
            _found.Add(dressing with { Item = CareItem.Securement, SealClass = 0, Rule = "securement.adhesive.withdressing" });
        _found.Add(dressing with { Item = CareItem.OutsideLength, SealClass = 0, Rule = "length.withdressing" });
    }

    private static (string Max, string Min) DressingRule(WallChart chart)
    {
        var gauze = chart.Cover is DressingKind.Gauze or DressingKind.GauzeUnderFilm;
        if (chart.Dressing.IsKnown && chart.Dressing.By!.Kind == LineEventKind.Inserted)
            return (gauze ? "dressing.first.gauze.max" : "dressing.first.film.max", "dressing.first.min");
        return chart.Cover switch
        {
            DressingKind.Gauze => ("dressing.gauze.max", "dressing.gauze.min"),
            DressingKind.GauzeUnderFilm => ("dressing.gauzeunderfilm.max", "dressing.gauzeunderfilm.min"),
            DressingKind.AntisepticFilm => ("dressing.antiseptic.max", "dressing.antiseptic.min"),
            _ => ("dressing.film.max", "dressing.film.min"),
        };
    }

    private void ReadConnector(WallChart chart, LumenChart lumen)
    {
        var infusion = _file.Infusions.FirstOrDefault(i => i.Line == chart.Line.Id && i.Lumen == lumen.Letter);
        var kind = infusion?.Kind switch
        {
            InfusionKind.Continuous => "connector.continuous",
            InfusionKind.ParenteralNutrition or InfusionKind.Lipid => "connector.pn",
            _ => "connector.intermittent",
        };
        var window = Window(CareItem.Connector, chart, lumen.Letter, lumen.Connector, $"{kind}.max", $"{kind}.min");
        if (lumen.Cracked is { } found)
        {
            var at = found.Performed is { } when ? Soonest(when) : found.RecordedAt;
            var late = _wall.Midnight(WallCalendar.DaysOn(_wall.DayAt(at), (int)_rules.Value("connector.compromised.max", _today)));
            var target = WallCalendar.HoursOn(at, _rules.Value("connector.compromised.target", _today));
            window = Deadline(window, at, target, late, found, "connector.compromised.max");
        }

        _found.Add(window);
    }

    /// <summary>A report replaces the window by a deadline; the clock that ran before still bounds it.</summary>
    private Finding Deadline(Finding window, Instant at, Instant target, Instant late, LineEvent report, string rule)
    {
        if (window.Standing != WindowStanding.DateUnknown && window.LateFrom < late) late = window.LateFrom;
        var opens = at < window.Opens ? at : window.Opens;
        var last = _wall.DayAt(late - Duration.Epsilon);
        var on = _wall.DayAt(at) < window.OpensOn ? _wall.DayAt(at) : window.OpensOn;
        return window with
        {
            Standing = WindowStanding.CutShort,
            Opens = opens,
            OpensOn = on,
            Target = target < late ? target : late,
            LateFrom = late,
            LastDay = last,
            Owner = OwnerOf(window.Item, new LineId(window.Line!), last),
            Anchor = report.Id.Value,
            Rule = rule,
        };
    }

    private Finding BrokenSeal(WallChart chart, Finding window)
    {
        Finding? worst = null;
        foreach (var report in chart.SealReports)
        {
            var at = report.Performed is { } when ? Soonest(when) : report.RecordedAt;
            var b = ClassOf(chart, report, _wall.DayAt(at));
            var late = AfterReport($"seal.b{b}.max", at);
            if (b == 1) late = Instant.Min(late, _wall.Midnight(_wall.DayAt(at)));
            var deadline = Deadline(window, at, AfterReport($"seal.b{b}.target", at), late, report, $"seal.b{b}.max") with { SealClass = b };
            if (worst is null || deadline.LateFrom < worst.LateFrom) worst = deadline;
        }

        return worst ?? window;
    }

    private Instant AfterReport(string id, Instant at)
    {
        var rule = _rules.On(id, _today)!;
        return rule.Unit == "hours"
            ? WallCalendar.HoursOn(at, rule.Value)
            : _wall.Midnight(WallCalendar.DaysOn(_wall.DayAt(at), (int)rule.Value));
    }

    private int ClassOf(WallChart chart, LineEvent report, LocalDate day)
    {
        var found = report.Seal;
        var b = (found & (SealFinding.SiteExposed | SealFinding.WetThrough | SealFinding.Soiled | SealFinding.Off)) != 0 ? 1
            : found == SealFinding.OuterCornerOnly ? 3 : 2;
        var infant = _file.BornOn is { } born && day < born.PlusMonths((int)_rules.Value("seal.raise.infant.age", day));
        var young = chart.Line is { Kind: LineKind.Tunneled, InsertedOn: { } placed }
            && day < WallCalendar.DaysOn(placed, (int)_rules.Value("seal.raise.tunneled.age", day));
        var raises = infant || young || _file.Infusions.Any(i => i.NeverInterrupt || i.Kind == InfusionKind.ParenteralNutrition)
            || (_file.Risks & (RiskFactors.InotropeRunning | RiskFactors.ParenteralNutrition | RiskFactors.LowWhiteCount | RiskFactors.RecentInfection)) != 0;
        return b > 1 && raises ? b - 1 : b;
    }

    private void ReadPort(WallChart chart)
    {
        if (!chart.NeedleIn)
        {
            _found.Add(Window(CareItem.PortFlush, chart, null, chart.PortFlush, "port.flush.max", "port.flush.min"));
            return;
        }

        if (chart.Cover is DressingKind.Gauze or DressingKind.GauzeUnderFilm && _rules.Value("dressing.gauze.wings.countsasfilm", _today) != 1)
            _found.Add(Window(CareItem.Dressing, chart, null, chart.Dressing, "dressing.gauze.port.max", "dressing.gauze.port.min"));
        foreach (var lumen in chart.Lumens.Where(lumen => !lumen.Occluded && !_file.Infusions.Any(i => i.Line == chart.Line.Id && i.Lumen == lumen.Letter)))
            _found.Add(Window(CareItem.LumenFlush, chart, lumen.Letter, lumen.Flush, "flush.lumen.max", "flush.lumen.min"));
        _found.Add(BrokenSeal(chart, Window(CareItem.PortNeedle, chart, null, chart.Needle, "port.needle.max", "port.needle.min")));
    }

    private void ReadSets(WallChart chart)
    {
        foreach (var infusion in _file.Infusions.Where(i => i.Line == chart.Line.Id))
        {
            if (chart.Lumens.FirstOrDefault(l => l.Letter == infusion.Lumen) is not { SetTakenDown: false } lumen) continue;
            var owner = infusion.SetChangedBy;
            if (owner == PerformerKind.Caregiver && OwnerOf(CareItem.Set, infusion.Line, _today) == Nurse)
            {
                owner = Nurse;
                _questions.Add($"{infusion.Line} {DecisionCodes.CaregiverNotValidated}");
            }

            if (infusion.Kind != InfusionKind.Continuous && !Hangs(infusion, lumen, owner)) continue;
            var (max, min) = infusion.Kind switch
            {
                InfusionKind.Continuous => ("set.continuous.max", "set.continuous.min"),
                InfusionKind.Intermittent => ("set.intermittent.max", null),
                InfusionKind.ParenteralNutrition => ("set.pn.max", null),
                InfusionKind.Lipid => ("set.lipid.max", null),
                _ => ("set.blood.max", (string?)null),
            };
            _found.Add(Window(CareItem.Set, chart, infusion.Lumen, lumen.Set, max, min, owner));
        }
    }

    /// <summary>A set that goes with a bag ends with the bag. With nothing on record only a nurse's own bag has to be looked at.</summary>
    private static bool Hangs(Infusion infusion, LumenChart lumen, PerformerKind owner)
    {
        var nursesDose = infusion is { Kind: InfusionKind.Intermittent, SetChangedBy: PerformerKind.Nurse };
        if (!lumen.Set.IsKnown) return owner == Nurse && !nursesDose;
        if (infusion.Kind == InfusionKind.Intermittent) return !nursesDose;
        if (lumen.DoseEnded?.Performed is not { } ended) return true;
        var hung = lumen.Set.When;
        return ended.At is { } down && hung.At is { } up ? down <= up : ended.Date < hung.Date;
    }

    private void ReadUnverified(WallChart chart, LineEvent care)
    {
        _questions.Add($"{chart.Line.Id} {DecisionCodes.UnverifiedCare}");
        var day = care.Performed?.Date ?? _wall.DayAt(care.RecordedAt);
        var last = WallCalendar.DaysOn(day, (int)_rules.Value("nursecheck.unverified.max", _today));
        _found.Add(Days(CareItem.NurseCheck, chart.Line.Id.Value, day, last, Nurse, care.Id.Value, "nursecheck.unverified.max"));
    }

    private void ReadRemoval(WallChart chart, LineEvent removal)
    {
        if (removal.Kind != LineEventKind.Removed) return;
        if (removal.OutsideLengthCm is { } taken && taken < chart.Line.InsertedLengthCm)
            _questions.Add($"{chart.Line.Id} {DecisionCodes.RemovedShorter}");
        if (chart.LookedAtAfterRemoval) return;
        var day = removal.Performed?.Date ?? _wall.DayAt(removal.RecordedAt);
        _found.Add(Days(CareItem.RemovalSiteCheck, chart.Line.Id.Value, WallCalendar.DaysOn(day, (int)_rules.Value("removal.sitecheck.min", _today)),
            WallCalendar.DaysOn(day, (int)_rules.Value("removal.sitecheck.max", _today)), Nurse, removal.Id.Value, "removal.sitecheck.max"));
    }

    private void ReadLocks(WallChart chart)
    {
        if (!chart.TipConfirmed) _locks.Add($"{chart.Line.Id} ");
        if (chart.LockedBy is not null) _locks.Add($"{chart.Line.Id} ");
        foreach (var lumen in chart.Lumens.Where(lumen => lumen.Occluded)) _locks.Add($"{chart.Line.Id} {lumen.Letter}");
        if (chart.ToldAgainstTheDate is not null) _questions.Add($"{chart.Line.Id} {DecisionCodes.ContradictedDate}");
        var tooYoung = _file.BornOn is { } born && _today < born.PlusMonths((int)_rules.Value("chlorhexidine.age.min", _today));
        if (chart.Cover == DressingKind.AntisepticFilm && (tooYoung || _file.Risks.HasFlag(RiskFactors.ChlorhexidineAllergy)))
            _questions.Add($"{chart.Line.Id} {DecisionCodes.Chlorhexidine}");
    }

    private void ReadLength(WallChart chart)
    {
        var from = chart.AcceptedLength ?? chart.FirstLength;
        if ((from?.OutsideLengthCm ?? chart.Line.OutsideLengthCm) is not { } before) return;
        if (chart.LastLength is not { } reading || reading == from) return;
        var growth = reading.OutsideLengthCm!.Value - before;
        if (growth > _rules.Value("length.step", _today)) _locks.Add($"{chart.Line.Id} ");
        if (growth >= _rules.Value("length.step", _today)) _questions.Add($"{chart.Line.Id} {DecisionCodes.LengthGrew}");
        if (-growth > _rules.Value("length.shortening", _today)) _questions.Add($"{chart.Line.Id} {DecisionCodes.LengthShrank}");
    }
}
