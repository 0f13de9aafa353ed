using HomeLine.Agency.Orders;
using HomeLine.Agency.Roster;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Tests.Orders;

/// <summary>Visits counted against an order, on an invented ledger; the agency's now is Monday 8 March, 06:00.</summary>
public sealed class VisitDaysTests
{
    private static readonly PatientId P03 = new("P03");
    private static readonly LocalDate Third = new(2027, 3, 3);
    private static readonly LocalDate Today = new(2027, 3, 8);

    private static LineEvent At(string id, int day, int hour, LineEventKind kind = LineEventKind.SiteChecked) => new()
    {
        Id = new EventId(id),
        Patient = P03,
        Kind = kind,
        Performed = CareMoment.Exactly(DemoAgency.At(day, hour, 0), DemoAgency.Roster.Profile.Zone),
        RecordedAt = DemoAgency.At(day, hour, 30),
    };

    private static PatientCare Care(params LineEvent[] events) => DemoAgency.Files[P03] with { Events = [.. events] };

    private static SignedVisit Signed(string record, LocalDate day, string entry, string? visit = null, string? amends = null) =>
        new(record, P03, day, visit, amends, [new EventId(entry)]);

    private static WeekVisit Planned(string id, int hour) =>
        new() { Id = id, Patient = P03, Nurse = "N1", Day = Today, Start = new LocalTime(hour, 0), Minutes = 40, Care = [] };

    [Fact]
    public void Two_visits_signed_on_one_day_count_twice() => Assert.Equal(
        [Third, Third],
        VisitDays.Of(Care(At("a-1", 3, 9), At("b-1", 3, 17)), [], [Signed("a", Third, "a-1"), Signed("b", Third, "b-1")], DemoAgency.At(8, 6, 0)));

    [Fact]
    public void A_day_without_a_signed_visit_counts_once() => Assert.Equal(
        [Third],
        VisitDays.Of(Care(At("x", 3, 9), At("y", 3, 17)), [], [], DemoAgency.At(8, 6, 0)));

    [Fact]
    public void An_amended_visit_counts_once_and_one_at_which_nothing_was_done_not_at_all() => Assert.Equal(
        [Third],
        VisitDays.Of(
            Care(At("a-1", 3, 9), At("c-1", 3, 17, LineEventKind.Missed)), [],
            [Signed("a", Third, "a-1"), Signed("b", Third, "a-1", amends: "a"), Signed("c", Third, "c-1")], DemoAgency.At(8, 6, 0)));

    [Fact]
    public void What_is_planned_today_counts_beside_what_was_signed_unless_it_is_the_same_visit() => Assert.Equal(
        [Today, Today],
        VisitDays.Of(
            Care(At("a-1", 8, 9)), [Planned("V1", 9), Planned("V2", 17)], [Signed("a", Today, "a-1", "V1")], DemoAgency.At(8, 12, 0)));
}
