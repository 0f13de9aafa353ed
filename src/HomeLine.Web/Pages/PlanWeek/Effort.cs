namespace HomeLine.Web.Pages.PlanWeek;

/// <summary>How hard to search. Rounds, not seconds, so that the same roster gives the same plan on any machine.</summary>
/// <param name="Name">As shown.</param>
/// <param name="Iterations">Rounds of taking visits out and putting them back.</param>
/// <param name="Meaning">When to choose it.</param>
public sealed record Effort(string Name, int Iterations, string Meaning)
{
    public static Effort Quick { get; } = new("Quick", 2_000, "a first look, 2,000 rounds");
    public static Effort Normal { get; } = new("Normal", 20_000, "for most weeks, 20,000 rounds");
    public static Effort Thorough { get; } = new("Thorough", 100_000, "before a hard week is published, 100,000 rounds");

    public static IReadOnlyList<Effort> All { get; } = [Quick, Normal, Thorough];
}
