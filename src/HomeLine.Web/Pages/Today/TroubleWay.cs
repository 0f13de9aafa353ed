using System.Collections.Immutable;

namespace HomeLine.Web.Pages.Today;

/// <summary>The ways in: one for each thing that breaks a day, with its address and its words.</summary>
/// <param name="Address">Last part of the address.</param>
/// <param name="Title">Heading of the page.</param>
/// <param name="Words">On the button.</param>
/// <param name="Hint">When to take it.</param>
public sealed record TroubleWay(string Address, string Title, string Words, string Hint)
{
    public static readonly ImmutableArray<TroubleWay> All =
    [
        new("nurse-out", "A nurse is out", "A nurse is out", "Ill, or the car will not start: for the day or from a time on."),
        new("late", "A nurse runs late", "A nurse runs late", "By some minutes, with the visit she is in."),
        new("door", "At the door", "At the door", "Nobody home, refused, or not safe."),
        new("alarm", "A pump alarm", "A pump alarm", "Symptoms first, then the phone script."),
        new("dose", "Dose taken before the level", "Dose already taken", "The level is off, the visit is not."),
        new("lesson", "A lesson cannot be held", "A lesson is off", "Who learns is ill or away: the series moves by one."),
        new("hospital", "In hospital", "Went to hospital", "Visits come out; time becomes free."),
        new("closure", "A road is closed", "A road is closed", "Snow, flood, an event: from when to when."),
        new("referral", "Can we take it?", "Can we take it?", "A referral on the phone."),
    ];

    public string Href => $"/today/{Address}";
}
