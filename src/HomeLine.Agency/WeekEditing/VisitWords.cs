using System.Globalization;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>Visits in the few words of a list of changes.</summary>
internal static class VisitWords
{
    public static string Place(WeekVisit visit) => $"{Day(visit.Day)} {Time(visit.Start)} {People(visit)}";

    /// <summary>What became of a visit, for example <c>P04 moves from Tue 09:31 N1 to Thu 10:10 N3</c>.</summary>
    public static string Change(WeekVisit? before, WeekVisit? after) => (before, after) switch
    {
        (null, { } came) => $"{came.Patient} gets a visit {Place(came)}",
        ({ } gone, null) => $"{gone.Patient} {Place(gone)} is taken out",
        ({ } was, { } now) when was.Day == now.Day && People(was) == People(now) && was.Start != now.Start =>
            $"{now.Patient} {Day(now.Day)} {Time(was.Start)} {People(now)} starts {Time(now.Start)}",
        ({ } was, { } now) when was.Day == now.Day && was.Start == now.Start && People(was) == People(now) =>
            $"{now.Patient} {Place(now)} does other care: {string.Join(", ", now.Care.Select(c => c.Label))}",
        ({ Second: { } went } was, { Second: { } comes } now) when was.Day == now.Day && was.Start == now.Start && was.Nurse == now.Nurse =>
            $"{now.Patient} {Day(now.Day)} {Time(now.Start)} {now.Nurse} gets {comes} as second person instead of {went}",
        ({ Second: null } was, { Second: { } along } now) when was.Day == now.Day && was.Start == now.Start && was.Nurse == now.Nurse =>
            $"{along} goes along with {now.Nurse} to {now.Patient} {Day(now.Day)} {Time(now.Start)}",
        ({ Second: { } along } was, { Second: null } now) when was.Day == now.Day && was.Start == now.Start && was.Nurse == now.Nurse =>
            $"{along} no longer goes along with {now.Nurse} to {now.Patient} {Day(now.Day)} {Time(now.Start)}",
        ({ } was, { } now) => $"{now.Patient} moves from {Place(was)} to {Place(now)}",
        _ => "",
    };

    public static string People(WeekVisit visit) => visit.Second is { } second ? $"{visit.Nurse} with {second}" : visit.Nurse;

    public static string Day(LocalDate day) => day.ToString("ddd", CultureInfo.InvariantCulture);

    public static string LongDay(LocalDate day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    public static string Time(LocalTime time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    public static string Range(LocalTime from, int minutes) => $"{Time(from)} to {Time(from.PlusMinutes(minutes))}";
}
