using System.Collections.Immutable;
using HomeLine.Exchange.History;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.Exchange.Tests.History;

/// <summary>Every example that ships shows what its title says; the dates were worked out by hand.</summary>
public sealed class HistoryExampleTests
{
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["America/New_York"];

    [Theory]
    [InlineData("film", CareItem.Dressing, null, 8, 10)]
    [InlineData("gauze", CareItem.Dressing, null, 8, 9)]
    [InlineData("connector", CareItem.Connector, "A", 8, 11)]
    [InlineData("film-gauze-film", CareItem.Dressing, null, 12, 14)]
    [InlineData("recertification", CareItem.Recertification, null, 7, 11)]
    [InlineData("order-met-dressing-late", CareItem.Dressing, null, 12, 14)]
    [InlineData("order-exceeded-clock-fine", CareItem.Dressing, null, 18, 20)]
    [InlineData("idle-port", CareItem.PortFlush, null, 4, 11)]
    [InlineData("two-lumens", CareItem.Connector, "A", 5, 8)]
    [InlineData("two-lumens", CareItem.Connector, "B", 7, 10)]
    [InlineData("late-entry", CareItem.Dressing, null, 7, 9)]
    [InlineData("looser-order", CareItem.Dressing, null, 8, 10)]
    public void The_window_is_the_one_worked_out_by_hand(string example, CareItem item, string? lumen, int opens, int last)
    {
        DueWindow window = Windows(example).Single(w => w.Item == item && (lumen is null || w.Lumen == lumen));

        Assert.Equal((new LocalDate(2027, 3, opens), new LocalDate(2027, 3, last)), (window.OpensOn, window.LastDay));
    }

    [Fact]
    public void The_nutrition_set_ends_24_elapsed_hours_after_spiking() =>
        Assert.Equal(Instant.FromUtc(2027, 3, 15, 1, 0), Windows("night-the-clocks-go-forward").Single(w => w.Item == CareItem.Set).LateFrom);

    [Fact]
    public void A_shorter_policy_makes_the_dressing_due_that_day() =>
        Assert.Equal(new LocalDate(2027, 3, 4), Windows("policy-made-shorter").Single(w => w.Item == CareItem.Dressing).LastDay);

    [Fact]
    public void Home_from_hospital_means_due_at_the_first_contact() =>
        Assert.Equal(WindowStanding.DateUnknown, Windows("home-from-hospital").Single(w => w.Item == CareItem.Dressing).Standing);

    [Fact]
    public void A_lifted_edge_with_nutrition_is_due_in_four_to_eight_hours_whatever_tape_was_added()
    {
        DueWindow window = Windows("lifting-edge").Single(w => w.Item == CareItem.Dressing);

        Assert.Equal((WindowStanding.CutShort, 1), (window.Standing, window.SealClass));
        Assert.Equal(Instant.FromUtc(2027, 3, 9, 16, 52), window.Target);
        Assert.Equal(Instant.FromUtc(2027, 3, 9, 20, 52), window.LateFrom);
    }

    [Fact]
    public void A_looser_order_opens_a_decision() => Assert.NotEmpty(Answer("looser-order").Decisions);

    [Fact]
    public void The_weeks_of_the_order_stand_beside_the_clock()
    {
        Assert.All(Weeks("order-met-dressing-late"), week => Assert.Equal(FrequencyStanding.Met, week.Standing));
        Assert.Equal(FrequencyStanding.Exceeded, Assert.Single(Weeks("order-exceeded-clock-fine")).Standing);
    }

    [Fact]
    public void Every_example_reads_without_a_fault() => Assert.All(HistoryExamples.All, example => Assert.Empty(Reading(example.Id).Faults));

    private static HistoryReading Reading(string id) =>
        HistoryText.Read(HistoryExamples.All.Single(example => example.Id == id).Text, PolicyBook.Default, Zone, Instant.FromUtc(2027, 3, 8, 11, 0));

    private static CareAnswer Answer(string id)
    {
        LineHistory history = Reading(id).History!;
        return WhatIsDue.For(history.Care, history.Policy, history.Now);
    }

    private static ImmutableArray<DueWindow> Windows(string id) => Answer(id).Windows;

    private static ImmutableArray<FrequencyWeek> Weeks(string id)
    {
        LineHistory history = Reading(id).History!;
        return VisitFrequency.Weeks(history.Care.Orders[0], history.Visits, history.Policy);
    }
}
