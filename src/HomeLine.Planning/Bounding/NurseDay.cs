using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Bounding;

/// <summary>A nurse on a day she works, with every visit she could make.</summary>
/// <param name="Index">Its number.</param>
/// <param name="Nurse">The nurse's position in the problem.</param>
/// <param name="Shift">Her shift.</param>
/// <param name="MostVisits">Most visits a day.</param>
/// <param name="Nodes">What she could do.</param>
internal sealed record NurseDay(int Index, int Nurse, Shift Shift, int MostVisits, List<VisitNode> Nodes);

/// <summary>One way to fill a nurse-day, with what it adds to each tier.</summary>
/// <param name="Day">The nurse-day.</param>
/// <param name="Nodes">Its visits in order.</param>
/// <param name="Adds">By <see cref="Tier"/>: what it adds.</param>
internal sealed record DayColumn(NurseDay Day, VisitNode[] Nodes, long[] Adds);
