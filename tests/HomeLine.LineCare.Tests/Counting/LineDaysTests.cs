using HomeLine.LineCare.Counting;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Counting;

/// <summary>Line-days by hand count. The rule is that of the home-infusion surveillance study (Infect Control Hosp Epidemiol 2023;44:1748-1759,
/// abstract and definition looked up): every day from placement or coming home to removal or admission. The figures are arithmetic of our own.</summary>
public sealed class LineDaysTests
{
    private static LineDays Count(Given given, LocalDate from, LocalDate through) =>
        LineDays.Of(given.Care, from, through, given.Policy, At(new LocalDate(2027, 4, 30), 12));

    private static Given EndDayExcluded(Given given) => given.AgencyRule("count.endday", 0, "switch", new LocalDate(2020, 1, 1));

    [Fact]
    public void Placed_on_the_first_and_removed_on_the_last_of_March_is_31_days_or_30_without_the_end()
    {
        var given = Picc().Event(LineEventKind.Inserted, Mar(1)).Event(LineEventKind.Removed, Mar(31));

        Assert.Equal(31, Count(given, Mar(1), new LocalDate(2027, 4, 10)).CentralLineDays);
        Assert.Equal(30, Count(EndDayExcluded(given), Mar(1), new LocalDate(2027, 4, 10)).CentralLineDays);
    }

    [Fact]
    public void Days_in_hospital_are_left_out()
    {
        var given = Picc().But(c => c with { CareStartedOn = Mar(1) })
            .Event(LineEventKind.AdmittedToHospital, Mar(11), but: e => e with { Line = null })
            .Event(LineEventKind.ReturnedHome, Mar(15), but: e => e with { Line = null })
            .Event(LineEventKind.Removed, Mar(20));

        Assert.Equal(11 + 6, Count(given, Mar(1), Mar(31)).CentralLineDays);
        Assert.Equal(10 + 5, Count(EndDayExcluded(given), Mar(1), Mar(31)).CentralLineDays);
    }

    [Fact]
    public void Two_central_lines_on_one_day_count_once_and_each_keeps_its_own_count()
    {
        var given = Picc().Line(LineKind.Tunneled, 2, "P1-2").But(c => c with { CareStartedOn = Mar(1) });
        var count = Count(given, Mar(1), Mar(10));

        Assert.Equal(10, count.CentralLineDays);
        Assert.All(count.Lines, line => Assert.Equal(10, line.Days));
    }

    [Fact]
    public void Placed_and_removed_on_one_day_is_one_day_or_none()
    {
        var given = Picc().Event(LineEventKind.Inserted, Mar(5), 9).Event(LineEventKind.Removed, Mar(5), 17);

        Assert.Equal(1, Count(given, Mar(1), Mar(31)).CentralLineDays);
        Assert.Equal(0, Count(EndDayExcluded(given), Mar(1), Mar(31)).CentralLineDays);
    }

    [Fact]
    public void Midlines_and_dialysis_catheters_count_no_central_days()
    {
        var count = Count(new Given().Line(LineKind.Midline, 1).Line(LineKind.DialysisCatheter, 2, "P1-2"), Mar(1), Mar(10));

        Assert.Equal(0, count.CentralLineDays);
        Assert.Equal(10, count.Lines[0].Days);
    }

    [Fact]
    public void A_line_exchanged_over_a_wire_does_not_double_its_days()
    {
        var given = Picc().Line(LineKind.Picc, 1, "P1-2").But(c => c with { CareStartedOn = Mar(1) })
            .Event(LineEventKind.Exchanged, Mar(6)).Event(LineEventKind.Inserted, Mar(6), but: e => e with { Line = new LineId("P1-2") });
        var count = Count(given, Mar(1), Mar(10));

        Assert.Equal(10, count.CentralLineDays);
        Assert.Equal([5, 5], count.Lines.Select(line => line.Days));
    }

    [Fact]
    public void An_idle_port_counts_by_policy()
    {
        var given = Port().But(c => c with { CareStartedOn = Mar(1) })
            .Event(LineEventKind.PortAccessed, Mar(3)).Event(LineEventKind.PortDeaccessed, Mar(6));

        Assert.Equal(10, Count(given, Mar(1), Mar(10)).CentralLineDays);
        Assert.Equal(4, Count(given.AgencyRule("count.idleport", 0, "switch", new LocalDate(2020, 1, 1)), Mar(1), Mar(10)).CentralLineDays);
    }

    [Fact]
    public void Dwell_and_events_are_counted_without_voided_entries()
    {
        var given = Picc().Event(LineEventKind.Inserted, Mar(1)).Dressing(Mar(3)).Dressing(Mar(8))
            .Event(LineEventKind.DressingChanged, Mar(9), but: e => e with { Voids = new EventId("E3") });
        var line = Count(given, Mar(1), Mar(31)).Lines.Single();

        Assert.Equal(30, line.DwellDays);
        Assert.Equal(2, line.Changes[LineEventKind.DressingChanged]);
    }

    [Fact]
    public void Days_that_have_not_come_are_not_counted() =>
        Assert.Equal(8, LineDays.Of(Picc().But(c => c with { CareStartedOn = Mar(1) }).Care, Mar(1), Mar(31), new Given().Policy, At(Mar(8), 6)).CentralLineDays);
}
