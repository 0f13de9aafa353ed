namespace HomeLine.Planning.Routing;

/// <summary>
/// How much searching may still be done. The room has no clock: whoever wants seconds brings a budget that reads one, whoever wants the same
/// plan every time counts iterations.
/// </summary>
public interface ISearchBudget
{
    /// <summary>Share of the budget used after so many iterations: 0 at the start, 1 or more when it is used up. Asked every few dozen iterations.</summary>
    /// <param name="iterations">Iterations done by the asking thread.</param>
    double Used(long iterations);

    /// <summary>Seconds left for a sub-problem that cannot be asked to stop in between; infinite when seconds do not matter.</summary>
    double SecondsLeft { get; }
}

/// <summary>A budget of iterations: the same seed and number give the identical plan.</summary>
/// <param name="Iterations">Ruin-and-recreate iterations, above 0.</param>
public sealed record IterationBudget(long Iterations) : ISearchBudget
{
    /// <inheritdoc />
    public double SecondsLeft => double.PositiveInfinity;

    /// <inheritdoc />
    public double Used(long iterations) => (double)iterations / Iterations;
}
