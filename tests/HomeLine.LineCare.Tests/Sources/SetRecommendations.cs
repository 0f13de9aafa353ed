using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using NodaTime;
using static HomeLine.LineCare.Tests.Given;

namespace HomeLine.LineCare.Tests.Sources;

/// <summary>
/// Published sources disagree on continuous sets; each must be possible as an agency's policy.
/// NSW Agency for Clinical Innovation, central venous access device recommendations 2012, 23 and 24; Sydney Children's Hospitals Network guideline
/// 2013-9037 v5 (2017); RSVP trial, Lancet 2021;397:1447-1458 (all looked up).
/// </summary>
public sealed class SetRecommendations
{
    private static readonly LocalDate LongAgo = new(2026, 1, 1);

    private static Given Running => Picc().Infusion(InfusionKind.Continuous, PerformerKind.Nurse).Event(LineCare.Ledger.LineEventKind.SetChanged, Mar(1), 9);

    [Fact]
    public void Standard_continuous_sets_after_96_hours_is_the_shipped_default() =>
        Assert.Equal(Duration.FromHours(96), Running.Window(CareItem.Set, Mar(2)).LateFrom - At(Mar(1), 9));

    [Fact]
    public void Seven_days_with_a_floor_of_96_hours_can_be_an_agencys_policy()
    {
        var window = Running.AgencyRule("set.continuous.max", 7, "days", LongAgo).AgencyRule("set.continuous.min", 96, "hours", LongAgo)
            .Window(CareItem.Set, Mar(2));

        Assert.Equal((Mar(8), At(Mar(5), 9)), (window.LastDay, window.Opens));
    }

    [Fact]
    public void A_floor_and_a_ceiling_that_cross_are_refused() =>
        Assert.Contains(PolicyCheck.Problems(Running.AgencyRule("set.continuous.min", 120, "hours", LongAgo)
            .AgencyRule("set.continuous.max", 96, "hours", LongAgo).Policy), problem => problem.Contains("is above", StringComparison.Ordinal));
}
