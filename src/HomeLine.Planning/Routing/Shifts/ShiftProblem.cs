using System.Collections.Immutable;

namespace HomeLine.Planning.Routing.Shifts;

/// <summary>
/// One day of visits by people with shifts: windows that may be missed at a price, overtime, lunch, preferred people, an even load, visits for two and patients who
/// may be left out. All times are whole minutes (or any other whole unit), all prices are whole.
/// </summary>
/// <param name="Places">How many places the matrix knows.</param>
/// <param name="Travel">Travel time from <c>a</c> to <c>b</c> at index <c>a * Places + b</c>.</param>
/// <param name="People">Who works.</param>
/// <param name="Visits">What is asked for.</param>
/// <param name="Optional">For each patient whether all of their visits may be left out together.</param>
/// <param name="Prices">What counts, and how much.</param>
public sealed record ShiftProblem(int Places, int[] Travel, ImmutableArray<ShiftPerson> People, ImmutableArray<ShiftVisit> Visits, ImmutableArray<bool> Optional, ShiftPrices Prices)
{
    /// <summary>True when a visit is late if its service ends after the window, false when only its start counts.</summary>
    public bool WindowsBoundTheEnd { get; init; }

    /// <summary>True when everybody leaves as the shift begins and waits at the first door; false when they leave as late as the first visit allows.</summary>
    public bool LeaveWithTheShift { get; init; }

    /// <summary>When lunch can be taken; null when nobody has any.</summary>
    public ShiftLunch? Lunch { get; init; }
}

/// <summary>Somebody who works that day.</summary>
/// <param name="Start">Place where the day begins.</param>
/// <param name="End">Place where it ends.</param>
/// <param name="Opens">Begin of the shift: nobody leaves earlier.</param>
/// <param name="Closes">End of the shift: coming back later is overtime.</param>
/// <param name="Lunch">Whether lunch is due.</param>
public sealed record ShiftPerson(int Start, int End, int Opens, int Closes, bool Lunch = false);

/// <summary>A visit for one person, or for two whose starts hang together.</summary>
/// <param name="Patient">Whose visit it is; a patient may have several.</param>
/// <param name="Place">Where.</param>
/// <param name="Windows">Ascending, at least one; nothing starts before the first opens. A start belongs to the last window that has opened by then.</param>
/// <param name="First">What the first person does.</param>
/// <param name="Second">What the second person does, or null.</param>
/// <param name="LeastGap">Least time from the first start to the second.</param>
/// <param name="MostGap">Most time from the first start to the second, included.</param>
public sealed record ShiftVisit(int Patient, int Place, ImmutableArray<ShiftWindow> Windows, ShiftPart First, ShiftPart? Second = null, int LeastGap = 0, int MostGap = 0)
{
    /// <summary>Own value: as good as no bound on a gap.</summary>
    public const int AnyGap = 1_000_000;

    /// <summary>The two parts in any order, by two people, in one and the same window.</summary>
    public ShiftVisit InOneWindow() => this with { LeastGap = -AnyGap, MostGap = AnyGap, SameWindow = true };

    /// <summary>Whether both parts belong to the same window; only where the gap is not bounded.</summary>
    public bool SameWindow { get; private init; }
}

/// <summary>A window, both ends included.</summary>
public readonly record struct ShiftWindow(int Opens, int Closes);

/// <summary>One person's part of a visit.</summary>
/// <param name="Duration">How long it takes, above 0.</param>
/// <param name="Able">Who can do it.</param>
/// <param name="Preferred">Whom the patient would rather see; empty for no wish.</param>
public sealed record ShiftPart(int Duration, ImmutableArray<int> Able, ImmutableArray<int> Preferred);

/// <summary>Lunch is taken where the next visit is, before it.</summary>
/// <param name="Opens">Earliest start.</param>
/// <param name="LatestStart">Latest start, included.</param>
/// <param name="Minutes">How long it takes.</param>
public sealed record ShiftLunch(int Opens, int LatestStart, int Minutes);

/// <summary>The price of each thing for one minute, one visit or one person.</summary>
public sealed record ShiftPrices
{
    /// <summary>Own value: what stands for "not at all" where a set forbids something that the search may pass through.</summary>
    public const int Forbidden = 1_000;

    /// <summary>For each minute on the road.</summary>
    public long Travel { get; init; }

    /// <summary>For each minute any part of a visit is late.</summary>
    public long Lateness { get; init; }

    /// <summary>For each minute of the largest lateness, once more.</summary>
    public long LargestLateness { get; init; }

    /// <summary>For each minute before a closed door, lunch not counted, nor what is left of the time after a lunch before the first visit.</summary>
    public long Waiting { get; init; }

    /// <summary>For each minute somebody comes back after the end of the shift.</summary>
    public long Overtime { get; init; }

    /// <summary>For each minute of the shift that the least busy person neither drives nor works nor eats.</summary>
    public long LargestIdle { get; init; }

    /// <summary>For each part of a visit by somebody the patient did not wish for.</summary>
    public long NotPreferred { get; init; }

    /// <summary>For each patient left out.</summary>
    public long LeftOut { get; init; }

    /// <summary>For each person without the lunch that is due.</summary>
    public long MissedLunch { get; init; }

    /// <summary>For each minute a person's service and travel differ from the mean of all, each difference rounded up.</summary>
    public long Unevenness { get; init; }
}
