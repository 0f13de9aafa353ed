using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using NodaTime;

namespace HomeLine.Agency.Decisions;

/// <summary>What a licensed person decided, as entered.</summary>
/// <param name="Key">Which question.</param>
/// <param name="Round">The round that was shown.</param>
/// <param name="Choice">What was chosen.</param>
/// <param name="LicensedName">Whose decision it is, by name and licence.</param>
/// <param name="Reason">Why.</param>
/// <param name="Until">Last day it holds, where the choice has an end; empty for the longest that policy allows.</param>
public sealed record DecisionMade(
    string Key, int Round, DecisionChoice Choice, string LicensedName, string Reason, LocalDate? Until = null);

/// <summary>A decision that was kept, and who must now be told.</summary>
public sealed record KeptDecision(DecisionRecord Record, ImmutableArray<PersonToTell> ToTell);
