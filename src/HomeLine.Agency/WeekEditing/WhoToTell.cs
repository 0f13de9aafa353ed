using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Somebody who has to hear of a change, and what.</summary>
/// <param name="IsFamily">The patient's family; otherwise a nurse.</param>
/// <param name="Id">The patient or the nurse.</param>
/// <param name="Name">Name as shown.</param>
/// <param name="Says">What to say, one sentence.</param>
/// <param name="WasTold">They were told something else before; otherwise it is news.</param>
public sealed record WhoToTell(bool IsFamily, string Id, string Name, string Says, bool WasTold);

/// <summary>Who has to be told when a week becomes another one. Families by the ranges they were told, nurses by their days.</summary>
public static class PeopleToTell
{
    /// <param name="told">What was published; empty when nothing was.</param>
    /// <param name="now">What would be.</param>
    /// <param name="from">Visits before this moment lie behind.</param>
    /// <param name="roster">Names.</param>
    /// <param name="rangeMinutes">Length of the arrival range.</param>
    public static ImmutableArray<WhoToTell> Of(
        IReadOnlyCollection<WeekVisit> told, IReadOnlyCollection<WeekVisit> now, LocalDateTime from, AgencyRoster roster, int rangeMinutes)
    {
        var was = told.Where(v => v.Day.At(v.Start) >= from).ToDictionary(v => v.Id);
        var then = now.Where(v => v.Day.At(v.Start) >= from).ToDictionary(v => v.Id);
        var names = roster.Patients.ToDictionary(p => p.Id, p => p.Name);
        string Nurse(string id) => roster.Nurses.FirstOrDefault(n => n.Id == id)?.Name ?? id;
        var people = ImmutableArray.CreateBuilder<WhoToTell>();
        var days = new SortedDictionary<string, SortedSet<LocalDate>>(StringComparer.Ordinal);
        foreach (string id in was.Keys.Union(then.Keys))
        {
            (WeekVisit? before, WeekVisit? after) = (was.GetValueOrDefault(id), then.GetValueOrDefault(id));
            if (before is not null && after is not null && before.Nurse == after.Nurse && before.Second == after.Second
                && before.Day == after.Day && before.Start == after.Start) continue;
            foreach ((string nurse, LocalDate day) in Seats(before).Concat(Seats(after)))
                (days.TryGetValue(nurse, out SortedSet<LocalDate>? set) ? set : days[nurse] = []).Add(day);
            if (before is not null && after is not null && Promises.Hold(before, after, rangeMinutes)) continue;
            string says = (before, after) switch
            {
                (null, { } came) => $"{Nurse(came.Nurse)} comes {VisitWords.LongDay(came.Day)}, {VisitWords.Range(came.Start, rangeMinutes)}.",
                ({ } gone, null) => $"Nobody comes {VisitWords.LongDay(gone.Day)}{Told(gone, rangeMinutes)}.",
                ({ Second: { } went } b, { Second: { } comes } a) when b.Nurse == a.Nurse && b.Day == a.Day && b.Start == a.Start =>
                    $"{Nurse(comes)} comes with {Nurse(a.Nurse)} {VisitWords.LongDay(a.Day)}, {VisitWords.Range(a.Start, rangeMinutes)}, instead of {Nurse(went)}.",
                ({ Second: null } b, { Second: { } along } a) when b.Nurse == a.Nurse && b.Day == a.Day && b.Start == a.Start =>
                    $"{Nurse(along)} comes along with {Nurse(a.Nurse)} {VisitWords.LongDay(a.Day)}, {VisitWords.Range(a.Start, rangeMinutes)}.",
                ({ Second: { } along } b, { Second: null } a) when b.Nurse == a.Nurse && b.Day == a.Day && b.Start == a.Start =>
                    $"{Nurse(a.Nurse)} comes {VisitWords.LongDay(a.Day)}, {VisitWords.Range(a.Start, rangeMinutes)}, without {Nurse(along)}.",
                ({ } b, { } a) => $"{Nurse(a.Nurse)} comes {VisitWords.LongDay(a.Day)}, {VisitWords.Range(a.Start, rangeMinutes)}, instead of "
                    + $"{(b.Nurse == a.Nurse ? "" : Nurse(b.Nurse) + ", ")}{VisitWords.LongDay(b.Day)}{Told(b, rangeMinutes)}.",
                _ => "",
            };
            LineCare.Lines.PatientId patient = (after ?? before)!.Patient;
            people.Add(new WhoToTell(true, patient.Value, names.GetValueOrDefault(patient, patient.Value), says, before?.Promise == PromiseState.Told));
        }

        return [
            .. people.OrderByDescending(p => p.WasTold).ThenBy(p => p.Id, StringComparer.Ordinal),
            .. days.Select(d => new WhoToTell(false, d.Key, Nurse(d.Key), $"Your day changes: {string.Join(", ", d.Value.Select(VisitWords.LongDay))}.", true)),
        ];
    }

    private static IEnumerable<(string, LocalDate)> Seats(WeekVisit? visit) =>
        visit is null ? [] : visit.Second is { } second ? [(visit.Nurse, visit.Day), (second, visit.Day)] : [(visit.Nurse, visit.Day)];

    private static string Told(WeekVisit visit, int rangeMinutes) =>
        visit.ToldFrom is { } from ? $", {VisitWords.Range(from, rangeMinutes)}" : $" {VisitWords.Time(visit.Start)}";
}
