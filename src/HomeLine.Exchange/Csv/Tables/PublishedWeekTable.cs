using System.Collections.Immutable;
using HomeLine.Agency.WeekPlanning;
using HomeLine.Exchange.Csv.Cells;
using HomeLine.LineCare.Lines;
using HomeLine.Planning.Plans;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>published-week.csv: the visits of the week in force, branch time.</summary>
internal static class PublishedWeekTable
{
    public static readonly TableShape Shape = TableShape.Of("published-week.csv", false,
        "visit! day! start! nurse! second_nurse patient! minutes! care! labels promise told_from held");

    private const int DaysInWeek = 7;
    private const int MostMinutes = 720;

    public static WeekVisit Read(Row row, LocalDate? weekFrom, ISet<string> seen)
    {
        string id = row.Id("visit");
        if (id.Length > 0 && !seen.Add(id)) row.Refuse("visit", "There are two visits with this identifier.");
        PatientId patient = row.Patient();
        string nurse = row.Nurse(row.Required("nurse"), "nurse");
        string second = row.Trimmed("second_nurse");
        if (second.Length > 0) row.Nurse(second, "second_nurse");
        if (second.Length > 0 && second == nurse) row.Refuse("second_nurse", "The second person must be somebody else.");
        return new WeekVisit
        {
            Id = id,
            Patient = patient,
            Nurse = nurse,
            Second = second.Length == 0 ? null : second,
            Day = Day(row, weekFrom),
            Start = row.RequiredTime("start"),
            Minutes = row.RequiredWhole("minutes", 1, MostMinutes),
            Care = Care(row, patient),
            Promise = row.OptionalWord<PromiseState>("promise") ?? PromiseState.Published,
            ToldFrom = row.Time("told_from"),
            Held = row.Has("held") ? row.Text("held") : null,
        };
    }

    public static IEnumerable<string[]> Write(PlannedWeek week) => week.Visits.Select(visit => new[]
    {
        visit.Id, TimeText.Write(visit.Day), TimeText.Write(visit.Start), visit.Nurse, visit.Second ?? "", visit.Patient.Value,
        NumberText.Write(visit.Minutes), string.Join("; ", visit.Care.Select(care => CareKeyCell.Write(care.Key))),
        string.Join("; ", visit.Care.Select(care => care.Label)), Words<PromiseState>.Of(visit.Promise), TimeText.Write(visit.ToldFrom),
        visit.Held ?? "",
    });

    private static LocalDate Day(Row row, LocalDate? weekFrom)
    {
        LocalDate day = row.RequiredDate("day");
        if (row.Has("day") && weekFrom is { } first && row.IsSound && (day < first || day >= first.PlusDays(DaysInWeek)))
            row.Refuse("day", $"This day lies outside the week from {TimeText.Write(first)}.");
        return day;
    }

    private static ImmutableArray<VisitCare> Care(Row row, PatientId patient)
    {
        ImmutableArray<string> keys = row.Parts("care");
        if (!row.Has("care")) row.Required("care");
        ImmutableArray<string> labels = row.Parts("labels");
        if (!labels.IsEmpty && labels.Length != keys.Length)
            row.Refuse("labels", $"There are {labels.Length} labels for {keys.Length} items of care. Leave labels empty or give one for each.");
        return [.. keys.Select((key, i) => new VisitCare(
            CareKeyCell.Read(row, "care", patient, key),
            i < labels.Length ? labels[i] : key))];
    }
}
