using System.Collections.Immutable;
using HomeLine.Agency.Reports;
using HomeLine.Agency.WeekPlanning;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>What follows from a trouble: what to say, what the rules say, who cannot wait, and at most three answers to choose from.</summary>
public sealed record MendOffer
{
    /// <summary>Lines to read to whoever is on the phone, in order.</summary>
    public ImmutableArray<string> Aloud { get; init; } = [];

    /// <summary>What follows whatever is chosen, in sentences.</summary>
    public ImmutableArray<string> Facts { get; init; } = [];

    /// <summary>Visits that cannot stay as they are, the one that can wait least first.</summary>
    public ImmutableArray<BrokenInWords> CannotWait { get; init; } = [];

    /// <summary>At most three, best first; none is as good as another on every count.</summary>
    public ImmutableArray<MendAnswer> Answers { get; init; } = [];

    /// <summary>People to ask how they are because nobody can come to them, the one that can wait least first.</summary>
    public ImmutableArray<PersonToTell> PhoneChecks { get; init; } = [];

    /// <summary>Ways that were looked at and are not open, with the reason.</summary>
    public ImmutableArray<string> RuledOut { get; init; } = [];

    /// <summary>Who must be told whatever is chosen.</summary>
    public ImmutableArray<PersonToTell> ToTell { get; init; } = [];

    /// <summary>What has to happen next, and by when; empty when choosing an answer is all.</summary>
    public NextStep? Next { get; init; }
}

/// <summary>What has to happen next.</summary>
public sealed record NextStep(string What, Instant By);

/// <summary>A visit that cannot stay as it is.</summary>
/// <param name="Visit">As published.</param>
/// <param name="Who">The patient's name.</param>
/// <param name="Because">What broke it.</param>
/// <param name="Waits">How long it can wait, in words.</param>
public sealed record BrokenInWords(WeekVisit Visit, string Who, string Because, string Waits);

/// <summary>One answer, ready to read and to apply.</summary>
public sealed record MendAnswer
{
    /// <summary>Names the answer within its trouble: <c>A</c>, <c>B</c> …</summary>
    public required string Key { get; init; }

    /// <summary>What it does, in a line.</summary>
    public required string Title { get; init; }

    /// <summary>Every visit that changes; empty for an answer outside the plan.</summary>
    public ImmutableArray<VisitChange> Changes { get; init; } = [];

    /// <summary>Care left without a visit, and why.</summary>
    public ImmutableArray<LeftUnmet> Unmet { get; init; } = [];

    /// <summary>What it costs.</summary>
    public MendPrice Price { get; init; } = new();

    /// <summary>Everybody who must be told, and nobody else.</summary>
    public ImmutableArray<PersonToTell> ToTell { get; init; } = [];

    /// <summary>Who has to agree first; empty when the coordinator may choose it.</summary>
    public string Decider { get; init; } = "";

    /// <summary>The place that pressing it keeps free for a referral; empty for every other answer.</summary>
    public HeldPlace? Holds { get; init; }

    /// <summary>What to know before choosing it.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>What follows in the days after, once it is done: next due dates, visits no longer needed.</summary>
    public ImmutableArray<string> After { get; init; } = [];

    /// <summary>Whether pressing it changes the published week.</summary>
    public bool ChangesWeek => !Changes.IsEmpty;
}

/// <summary>One visit before and after.</summary>
/// <param name="Before">As published; empty for a new visit.</param>
/// <param name="After">As it would be; empty when it falls away.</param>
/// <param name="Words">The change in a sentence.</param>
/// <param name="MinutesLater">How much later it starts; negative for earlier, 0 when it keeps its time or is new.</param>
public sealed record VisitChange(WeekVisit? Before, WeekVisit? After, string Words, int MinutesLater);

/// <summary>Care nobody comes for.</summary>
public sealed record LeftUnmet(string Who, string Care, string Because, ImmutableArray<string> WouldHelp);

/// <summary>What an answer costs. Lower is better on every count.</summary>
public sealed record MendPrice
{
    /// <summary>Critical care late or unmet, as the score counts it.</summary>
    public long Critical { get; init; }

    /// <summary>Points of lateness.</summary>
    public long Late { get; init; }

    /// <summary>Visits left without anybody.</summary>
    public int Unmet { get; init; }

    /// <summary>Families who hear of another time, day or nurse.</summary>
    public int Families { get; init; }

    /// <summary>Of them, those who get another day.</summary>
    public int OtherDay { get; init; }

    /// <summary>Minutes, over all of them, that a nurse comes later than was told or published, on the same day.</summary>
    public int Waiting { get; init; }

    /// <summary>Nurses whose day changes.</summary>
    public int Nurses { get; init; }

    /// <summary>Minutes of driving added; negative when saved.</summary>
    public int DrivingDelta { get; init; }

    /// <summary>Minutes of overtime added.</summary>
    public int Overtime { get; init; }

    /// <summary>Points of the disruption table.</summary>
    public long Disruption { get; init; }

    /// <summary>Whether another answer is at least as good on every count and better on one.</summary>
    internal bool IsBeatenBy(MendPrice other)
    {
        ImmutableArray<long> mine = Counts(), theirs = other.Counts();
        return mine.Zip(theirs).All(pair => pair.Second <= pair.First) && !mine.SequenceEqual(theirs);
    }

    internal bool IsSameAs(MendPrice other) => Counts().SequenceEqual(other.Counts());

    private ImmutableArray<long> Counts() => [Critical, Late, Unmet, Families, OtherDay, Waiting, Nurses, DrivingDelta, Overtime];
}
