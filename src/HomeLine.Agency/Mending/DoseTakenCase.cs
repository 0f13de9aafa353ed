using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.Planning.Problem;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>
/// The dose was taken before the level was drawn: the level is cancelled, since it would mislead; the rest of the visit stays. The pharmacist decides about a
/// new one before the next dose; where it could be is looked up, not booked. Pure.
/// </summary>
internal static class DoseTakenCase
{
    private const string TaskId = "level";

    /// <summary>The visit ahead that holds the level, and its order.</summary>
    public static (WeekVisit Visit, CareOrder Order)? Level(DoseTaken entry, PlannedWeek week, AgencyAtHand agency)
    {
        foreach (WeekVisit visit in week.Visits.Where(v => v.Patient == entry.Patient && v.Day >= agency.Today).OrderBy(v => v.Day).ThenBy(v => v.Start))
        {
            CareOrder? order = visit.Care.Select(c => Order(c, agency)).OfType<CareOrder>().FirstOrDefault();
            if (order is not null) return (visit, order);
        }

        return null;
    }

    public static Refusal? Fault(DoseTaken entry, AgencyAtHand agency) => entry.TakenAt > agency.Now
        ? new Refusal("dose-in-future", "The dose would be taken in the future.", "Correct the time.")
        : null;

    public static Outcome<MendOffer> Offer(DoseTaken entry, MendSetting setting)
    {
        if (Level(entry, setting.Week, setting.Agency) is not { } level)
            return new Refusal("no-level-planned", "No level before a dose is planned for this patient.", "Write the dose down in the visit; the pharmacist decides about a level.");
        (WeekVisit visit, CareOrder order) = level;
        string name = setting.People.Name(entry.Patient);
        LocalDateTime next = NextDose(order, setting);
        ImmutableArray<VisitCare> left = [.. visit.Care.Where(c => Order(c, setting.Agency) is null)];
        string taken = DayWords.Time(entry.TakenAt.InZone(setting.Calendar.Zone).TimeOfDay);
        WeekVisit? after = left.IsEmpty ? null : visit with { Care = left, Minutes = Math.Min(visit.Minutes, MinutesOf(visit, left, setting)) };
        string words = after is null
            ? $"{name}, {DayWords.When(visit)}: the level is cancelled and nothing is left of the visit."
            : $"{name}, {DayWords.When(visit)}: the level is cancelled; the visit stays for {string.Join("; ", left.Select(c => c.Label))}.";
        return new MendOffer
        {
            Aloud = ["Take the next dose at its usual time unless you hear from us before.", "Write down when you took this one."],
            Facts =
            [
                $"The dose was taken at {taken}: a level drawn now would mislead. It is cancelled, not drawn.",
                $"The pharmacist decides about a new level before the next dose, {DayWords.Moment(next)}.",
                .. NewLevel(entry.Patient, order, visit, setting),
            ],
            Answers =
            [
                new MendAnswer
                {
                    Key = "A",
                    Title = after is null ? "Cancel the visit with the level" : $"Cancel the level, keep the visit at {DayWords.Time(visit.Start)}",
                    Changes = [new VisitChange(visit, after, words, 0)],
                    Price = new MendPrice { Nurses = 1 },
                    ToTell =
                    [
                        setting.People.Nurse(visit.Nurse, $"{name}: do not draw the level. {(after is null ? "The visit is off." : "The rest of the visit stays.")}"),
                        new Reports.PersonToTell("Laboratory list", "list", $"The level of {name} on {DayWords.When(visit)} is off.", setting.People.Soon),
                    ],
                },
            ],
            ToTell = [setting.People.Pharmacist($"{name}: the dose was taken at {taken}, before the level. Decide about a new level before {DayWords.Moment(next)}.")],
            Next = new NextStep("The pharmacist decides about a new level.", next.InZoneLeniently(setting.Agency.Files[entry.Patient].Zone).ToInstant()),
        };
    }

    /// <summary>Where a new level could be drawn the next day it is tied to a dose; nothing is booked without an order.</summary>
    private static ImmutableArray<string> NewLevel(PatientId id, CareOrder order, WeekVisit visit, MendSetting setting)
    {
        if (order is not { StartFrom: { } from, StartTo: { } to }) return [];
        Patient patient = setting.Agency.Roster.Patients.First(p => p.Id == id);
        LocalDate day = visit.Day.PlusDays(1);
        if (setting.Calendar.Day(day) >= setting.Calendar.DayCount) return [];
        (int setup, int work) = new CareMinutes(setting.Agency.Files.Policy, setting.Agency.Today).Of(order);
        var span = new Span(setting.Calendar.Minute(day, from, patient.Zone), setting.Calendar.Minute(day, to, patient.Zone));
        var task = new CareTask
        {
            Id = TaskId,
            Patient = id.Value,
            Label = order.Text,
            Opens = span.From,
            LateFrom = span.To + 1,
            HardLatest = span.To,
            StartSpans = [span],
            SetupMinutes = setup + patient.ExtraMinutes,
            WorkMinutes = work,
            Skills = CareSkills.Of(CareItem.Labs, null, order, patient),
            Weight = 1,
            Safety = true,
            DrawToDropMinutes = order.NeedsCourier ? (int)setting.Agency.Files.Policy.ValueOf("specimen.drawtodrop.max", setting.Agency.Today) : null,
        };
        NewVisitAnswers found = NewVisitAnswers.Of(setting.Agency, setting.Week, task, []);
        string when = $"{DayWords.Day(day)} between {DayWords.Time(from)} and {DayWords.Time(to)}";
        return found.Answers.IsEmpty
            ? [$"For {when} no nurse was found without moving others; ask the pharmacist for another time."]
            : [$"If it is ordered for {when}: {found.Answers[0].Title} is open{(found.Answers[0].Price.Families == 0 ? " and moves nobody" : "")}. Nothing is booked without the order."];
    }

    private static CareOrder? Order(VisitCare care, AgencyAtHand agency)
    {
        string[] key = care.Key.Split('|');
        return key.Length == 5 ? agency.Roster.Orders.FirstOrDefault(o => o.Id == key[4] && o.Kind == OrderKind.DrugLevel) : null;
    }

    private static LocalDateTime NextDose(CareOrder order, MendSetting setting)
    {
        LocalDateTime now = setting.Agency.Now.InZone(setting.Agency.Files[order.Patient].Zone).LocalDateTime;
        // The dose just taken was today's next; the one after it counts.
        return Enumerable.Range(0, 3).SelectMany(d => order.DoseTimes.Order().Select(t => now.Date.PlusDays(d).At(t))).Where(t => t > now).Skip(1).First();
    }

    private static int MinutesOf(WeekVisit visit, ImmutableArray<VisitCare> left, MendSetting setting)
    {
        ImmutableArray<CareTask> tasks = [.. setting.Standing.Needs.GetValueOrDefault(visit.Id, [])
            .Where(n => left.Any(c => c.Key == n.Key)).Select(n => n.Task)];
        return tasks.IsEmpty ? visit.Minutes : tasks.Max(t => t.SetupMinutes) + tasks.Sum(t => t.WorkMinutes);
    }
}
