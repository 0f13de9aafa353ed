namespace HomeLine.Planning.Answers;

/// <summary>A place for the urgent visit that works as far as the tables know, kept small until it is worth writing out.</summary>
/// <param name="Line">The nurse-day.</param>
/// <param name="Position">Place in it.</param>
/// <param name="Start">Start of the urgent visit.</param>
/// <param name="Moved">Told families who move.</param>
/// <param name="Disruption">Points of the disruption table.</param>
/// <param name="Driving">Minutes of driving added on the day, compared with the published plan.</param>
/// <param name="Deeper">Found with overtime, on-call nurses or more moves allowed.</param>
/// <param name="SecondLine">Nurse-day of the second person, or -1.</param>
/// <param name="SecondPosition">Place in it.</param>
/// <param name="Other">A visit that makes room and goes elsewhere, or -1.</param>
/// <param name="Elsewhere">Where it goes.</param>
internal sealed record Candidate(
    int Line,
    int Position,
    int Start,
    int Moved,
    int Disruption,
    int Driving,
    bool Deeper,
    int SecondLine = -1,
    int SecondPosition = 0,
    int Other = -1,
    OtherPlace Elsewhere = default);

/// <summary>Where a visit that makes room goes.</summary>
/// <param name="Line">The nurse-day.</param>
/// <param name="Position">Place in it, once the urgent visit stands.</param>
/// <param name="Start">Its new start.</param>
internal readonly record struct OtherPlace(int Line, int Position, int Start);
