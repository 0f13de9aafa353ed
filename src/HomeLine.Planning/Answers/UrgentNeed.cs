using System.Collections.Immutable;

namespace HomeLine.Planning.Answers;

/// <summary>A need that came up after the plan was published.</summary>
/// <param name="Patient">Whose.</param>
/// <param name="Tasks">Identifiers of the problem's tasks to be done in one new visit (deadline, target and earliest start are theirs).</param>
/// <param name="ReplacesVisits">Later visits that the new one makes unnecessary; they are taken out, their other tasks move into the new visit.</param>
public sealed record UrgentNeed(string Patient, ImmutableArray<string> Tasks, ImmutableArray<string> ReplacesVisits);
