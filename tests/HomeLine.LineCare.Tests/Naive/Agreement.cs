using CsCheck;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>The engine against a clerk who counts by walking: both answer thousands of random histories, and must say the same.</summary>
public sealed class Agreement
{
    /// <summary>Random histories in every run of the tests; <c>HOMELINE_HISTORIES</c> asks for more, for a night for example.</summary>
    private const int Histories = 6_000;

    private static readonly int Asked =
        int.TryParse(Environment.GetEnvironmentVariable("HOMELINE_HISTORIES"), out var asked) && asked > 0 ? asked : Histories;

    [Fact]
    public void The_engine_and_the_clerk_agree_on_every_window_lock_and_question() =>
        Naive.Histories.Any.Sample(
            history =>
            {
                var difference = Difference(history);
                Assert.True(difference.Length == 0, difference);
            },
            iter: Asked, print: history => $"{Difference(history)}\n{history}");

    private static string Difference(History history) =>
        Findings.Of(WhatIsDue.For(history.Care, history.Book, history.Now)).Against(Desk.Answer(history.Care, history.Book, history.Now));
}
