using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Windows;
using HomeLine.Planning.Problem;

namespace HomeLine.Agency.Mending;

/// <summary>
/// Care a clinic was to give and has not reported in time is the agency's: ask the clinic once more, and here is who could come. What is open, and whose it
/// is, the clocks say. Pure.
/// </summary>
internal static class ClinicCase
{
    private const string TaskId = "instead of the clinic";

    /// <summary>Care expected from elsewhere that nobody has reported: whose report is awaited, and whose is overdue.</summary>
    public static IEnumerable<(OutsideCare Expected, bool IsOverdue)> Awaited(AgencyAtHand agency) => agency.Roster.OutsideCare
        .Where(o => o.ExpectedOn <= agency.Today && agency.Roster.Patients.Any(p => p.Id == o.Patient) && !Open(o, agency).IsEmpty)
        .Select(o => (o, agency.Now >= o.FallBackFrom.InZoneLeniently(agency.Files[o.Patient].Zone).ToInstant()));

    public static Refusal? Fault(ClinicSilent entry, AgencyAtHand agency)
    {
        (OutsideCare Expected, bool IsOverdue)[] awaited = [.. Awaited(agency).Where(a => a.Expected.Patient == entry.Patient)];
        if (awaited.Length == 0) return new Refusal("clinic-not-awaited", "No clinic's report is awaited for this patient.", "Look at what is due on the patient's page.");
        return awaited.Any(a => a.IsOverdue)
            ? null
            : new Refusal("clinic-has-time", $"{awaited[0].Expected.Where} has until {DayWords.Moment(awaited[0].Expected.FallBackFrom)} to report.", "Ask them; until then nobody of ours is sent.");
    }

    public static MendOffer Offer(ClinicSilent entry, MendSetting setting)
    {
        AgencyAtHand agency = setting.Agency;
        OutsideCare expected = Awaited(agency).First(a => a.IsOverdue && a.Expected.Patient == entry.Patient).Expected;
        string name = setting.People.Name(entry.Patient);
        var ask = new PersonToTell(expected.Where, "phone, number of the clinic", $"Was the care of {name} done on {DayWords.Day(expected.ExpectedOn)}? Ask for the report.", setting.People.Soon);
        ImmutableArray<string> facts =
        [
            $"{expected.Where} was to do it on {DayWords.Day(expected.ExpectedOn)}, and no report came by {DayWords.Moment(expected.FallBackFrom)}. It is ours now.",
            "If they did it after all, record their report on the patient's page and close this without an answer: nobody changes a dressing twice.",
        ];
        ImmutableArray<CareNeed> needs = Needs(expected, setting);
        if (setting.Week.Visits.FirstOrDefault(v => Ahead(v, setting) && v.Patient == entry.Patient && v.Care.Any(c => needs.Any(n => n.Key == c.Key))) is { } planned)
            return new MendOffer { Facts = [.. facts, $"A visit for it stands already: {DayWords.When(planned)} with {setting.People.NurseName(planned.Nurse)}."], ToTell = [ask], Next = new NextStep("Ask the clinic once more.", setting.People.Soon) };
        if (needs.IsEmpty)
            return new MendOffer { Facts = [.. facts, "Nothing of it is open to be done in this week."], ToTell = [ask], Next = new NextStep("Ask the clinic once more.", setting.People.Soon) };
        CareTask task = Task(needs, setting);
        NewVisitAnswers inTime = NewVisitAnswers.Of(agency, setting.Week, task, [.. needs.Select(n => n.AsVisitCare())]);
        int tomorrow = (setting.Calendar.Day(agency.Today) + 1) * PlanCalendar.MinutesADay;
        NewVisitAnswers next = tomorrow < setting.Calendar.End
            ? NewVisitAnswers.Of(agency, setting.Week, task with { Opens = tomorrow, TargetBy = null, LateFrom = Math.Max(task.LateFrom, tomorrow + PlanCalendar.MinutesADay) }, [.. needs.Select(n => n.AsVisitCare())])
            : new NewVisitAnswers([], []);
        // What somebody has to agree to first comes after what one press does.
        MendAnswer[] answers = [.. inTime.Answers.Concat(next.Answers).DistinctBy(a => a.Title).OrderBy(a => a.Decider.Length > 0).ThenBy(a => a.Price.Families).Take(3)];
        return new MendOffer
        {
            Facts = [.. facts, $"By the clock it is due by {DayWords.Day(needs[0].Windows[0].LastDay)}."],
            Answers = [.. answers.Select((a, i) => a with { Key = ((char)('A' + i)).ToString() })],
            RuledOut = inTime.RuledOut,
            ToTell = [ask],
        };
    }

    private static bool Ahead(WeekVisit visit, MendSetting setting) => setting.Calendar.Minute(visit.Day, visit.Start) >= setting.Now;

    private static ImmutableArray<DueWindow> Open(OutsideCare expected, AgencyAtHand agency) =>
        [.. agency.Files.WhatIsDue(expected.Patient, agency.Now).Windows.Where(w => w.Item is CareItem.Dressing or CareItem.PortNeedle or CareItem.Connector
            && (expected.Line is null || w.Line == expected.Line) && w.Standing != WindowStanding.CutShort && !(w.Because.AnchorDate >= expected.ExpectedOn))];

    /// <summary>What a nurse does for the patient in one visit: everything of the line that may be done now, the most pressing first.</summary>
    private static ImmutableArray<CareNeed> Needs(OutsideCare expected, MendSetting setting)
    {
        Patient patient = setting.Agency.Roster.Patients.First(p => p.Id == expected.Patient);
        return [.. WeekDemand.NeedsOf([patient], setting.Agency.Files, setting.Calendar, setting.Agency.Now).Needs
            .Where(n => n.Task is { After: null, StartSpans.IsEmpty: true } && n.Windows[0].Opens <= setting.Agency.Now && (expected.Line is null || n.Windows[0].Line is null || n.Windows[0].Line == expected.Line))
            .OrderBy(n => n.Task.LateFrom)];
    }

    private static CareTask Task(ImmutableArray<CareNeed> needs, MendSetting setting)
    {
        ImmutableArray<CareTask> parts = [.. needs.Select(n => n.Task)];
        return parts[0] with
        {
            Id = TaskId,
            Label = string.Join("; ", parts.Select(p => p.Label)),
            Opens = setting.Now,
            HardLatest = int.MaxValue,
            SetupMinutes = parts.Max(p => p.SetupMinutes),
            WorkMinutes = parts.Sum(p => p.WorkMinutes),
            Skills = [.. parts.SelectMany(p => p.Skills).Distinct().Order(StringComparer.Ordinal)],
            Safety = true,
        };
    }
}
