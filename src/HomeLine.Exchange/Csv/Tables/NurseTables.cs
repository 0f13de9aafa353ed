using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.Exchange.Csv.Cells;
using NodaTime;

namespace HomeLine.Exchange.Csv.Tables;

/// <summary>nurses.csv: who they are, what they may do, and where they are licensed.</summary>
internal static class NursesTable
{
    public static readonly TableShape Shape = TableShape.Of("nurses.csv", true,
        "nurse! name! credential! x! y! phone skills sign_offs licences! traits lunch_minutes overtime_minutes max_visits_a_day visit_caps note");

    private const int MostMinutes = 600;
    private const int MostVisits = 30;
    private const int UsualMostVisits = 8;
    private const string Until = " until ";
    private const string Compact = " compact";
    private static readonly ImmutableArray<string> Credentials = ["RN", "LPN"];

    public static NurseFile Read(Row row)
    {
        string id = row.Id("nurse");
        if (id.Length > 0 && !row.Ties.Nurses.Add(id)) row.Refuse("nurse", "There are two nurses with this identifier.");
        string credential = row.Required("credential");
        if (credential.Length > 0 && !Credentials.Contains(credential)) row.Refuse("credential", "One of: RN, LPN.");
        (double x, double y) = row.Place();
        ImmutableArray<StateLicence> licences = [.. row.Parts("licences").Select(part => Licence(row, part))];
        if (licences.IsEmpty) row.Refuse("licences", "A nurse needs at least one licence, for example Marrow until 2027-12-31.");
        return new NurseFile
        {
            Id = id,
            Name = row.RequiredText("name"),
            Credential = credential,
            Home = new MapPoint(x, y),
            Phone = row.Text("phone"),
            Skills = row.List("skills"),
            SignOffs = [.. row.Parts("sign_offs").Select(part => SignOff(row, part)).OfType<SignOffEnd>()],
            Licences = licences,
            Traits = row.List("traits"),
            LunchMinutes = row.Whole("lunch_minutes", 0, MostMinutes) ?? 0,
            OvertimeMinutes = row.Whole("overtime_minutes", 0, MostMinutes) ?? 0,
            MaxVisitsADay = row.Whole("max_visits_a_day", 1, MostVisits) ?? UsualMostVisits,
            VisitCaps = [.. row.Parts("visit_caps").Select(part => VisitCapCell.Read(row, part)).OfType<KindCap>()],
            Note = row.Text("note"),
        };
    }

    public static IEnumerable<string[]> Write(IEnumerable<NurseFile> nurses) => nurses.Select(nurse => new[]
    {
        nurse.Id, nurse.Name, nurse.Credential, NumberText.Write(nurse.Home.X), NumberText.Write(nurse.Home.Y),
        nurse.Phone, ListText.Write(nurse.Skills), SignOffText(nurse), LicenceText(nurse), ListText.Write(nurse.Traits),
        NumberText.Write(nurse.LunchMinutes), NumberText.Write(nurse.OvertimeMinutes), NumberText.Write(nurse.MaxVisitsADay),
        VisitCapCell.Write(nurse.VisitCaps), nurse.Note,
    });

    private static string SignOffText(NurseFile nurse) => nurse.SignOffs.IsDefaultOrEmpty
        ? ""
        : string.Join("; ", nurse.SignOffs.Select(one => one.Skill + Until + TimeText.Write(one.ValidThrough)));

    private static string LicenceText(NurseFile nurse) => string.Join("; ", nurse.Licences.Select(licence =>
        licence.State + (licence.Compact ? Compact : "") + (licence.ValidThrough is { } day ? Until + TimeText.Write(day) : "")));

    private static StateLicence Licence(Row row, string part)
    {
        (string what, LocalDate? end) = Ended(row, part, "licences");
        bool compact = what.EndsWith(Compact, StringComparison.OrdinalIgnoreCase);
        return new StateLicence(row.State(compact ? what[..^Compact.Length].Trim() : what, "licences"), end, compact);
    }

    private static SignOffEnd? SignOff(Row row, string part)
    {
        (string skill, LocalDate? end) = Ended(row, part, "sign_offs");
        if (!row.List("skills").Contains(skill)) row.Refuse("sign_offs", part, "This skill is not among the skills of the nurse.");
        else if (end is null) row.Refuse("sign_offs", part, "A sign-off that does not lapse is not listed here; write for example PORT until 2027-12-31.");
        return end is { } last ? new SignOffEnd(skill, last) : null;
    }

    private static (string What, LocalDate? End) Ended(Row row, string part, string column)
    {
        int until = part.LastIndexOf(Until, StringComparison.OrdinalIgnoreCase);
        if (until < 0) return (part.Trim(), null);
        DateCell end = DateCell.Read(part[(until + Until.Length)..].Trim(), row.Ties.Dates);
        if (end.Problem is { } problem) row.Refuse(column, part, problem);
        return (part[..until].Trim(), end.Date);
    }
}

/// <summary>shifts.csv: usual working times, branch time.</summary>
internal static class ShiftsTable
{
    public static readonly TableShape Shape = TableShape.Of("shifts.csv", true, "nurse! weekday! from! to! on_call");

    public sealed record Shift(string Nurse, WorkingTime Time);

    /// <summary>More on one weekday is a mistake, and comparing them all would take a hostile file for ever.</summary>
    private const int MostADay = 6;

    public static Shift Read(Row row, IDictionary<(string, IsoDayOfWeek), List<WorkingTime>> earlier)
    {
        string nurse = row.Nurse(row.Required("nurse"), "nurse");
        LocalTime from = row.RequiredTime("from");
        LocalTime to = row.RequiredTime("to");
        if (row.IsSound && to <= from) row.Refuse("to", "The shift ends before it starts. Write a night as two rows, one a day.");
        ImmutableArray<IsoDayOfWeek> days = row.Weekdays("weekday");
        if (days.Length != 1) row.Refuse("weekday", $"One weekday a row: {WeekdayWords.All}.");
        var shift = new Shift(nurse, new WorkingTime(days.FirstOrDefault(IsoDayOfWeek.Monday), from, to, row.YesNo("on_call")));
        if (!row.IsSound) return shift;
        if (!earlier.TryGetValue((nurse, shift.Time.Weekday), out List<WorkingTime>? same))
            earlier.Add((nurse, shift.Time.Weekday), same = []);
        if (same.Count == MostADay) row.Refuse("weekday", $"A nurse has at most {MostADay} working times on one weekday.");
        else if (same.Any(other => other.From < to && from < other.To))
            row.Refuse("from", "This overlaps another working time of this nurse on the same weekday.");
        else same.Add(shift.Time);
        return shift;
    }

    public static IEnumerable<string[]> Write(IEnumerable<NurseFile> nurses) =>
        from nurse in nurses
        from time in nurse.Week
        select new[]
        {
            nurse.Id, WeekdayWords.Of(time.Weekday), TimeText.Write(time.From), TimeText.Write(time.To), time.OnCall ? "yes" : "no",
        };
}

/// <summary>leaves.csv: days off.</summary>
internal static class LeavesTable
{
    public static readonly TableShape Shape = TableShape.Of("leaves.csv", false, "nurse! from! through! reason");

    public sealed record NurseLeave(string Nurse, Leave Leave);

    public static NurseLeave Read(Row row)
    {
        string nurse = row.Nurse(row.Required("nurse"), "nurse");
        LocalDate from = row.RequiredDate("from");
        LocalDate through = row.RequiredDate("through");
        if (row.IsSound) row.InOrder<LocalDate>("from", from, "through", through);
        return new NurseLeave(nurse, new Leave(from, through, row.Text("reason")));
    }

    public static IEnumerable<string[]> Write(IEnumerable<NurseFile> nurses) =>
        from nurse in nurses
        from leave in nurse.Leaves
        select new[] { nurse.Id, TimeText.Write(leave.From), TimeText.Write(leave.Through), leave.Reason };
}
