using System.Collections.Immutable;
using HomeLine.Agency.WeekEditing;
using NodaTime;

namespace HomeLine.Web.Pages.WeekEditing;

/// <summary>What a coordinator holds: a visit, an unmet need, or a change about to be made; and the place or the answer looked at.</summary>
/// <param name="Title">What is held, in words.</param>
/// <param name="Stop">The visit; empty for anything else.</param>
/// <param name="Need">The unmet need; empty for anything else.</param>
/// <param name="Places">Where it may go, by day, nurse and position.</param>
/// <param name="At">The place looked at, from 0; -1 for none.</param>
/// <param name="Edit">The change looked at; empty while none is.</param>
/// <param name="Then">What that change would do.</param>
public sealed record InHand(
    string Title, DraftStop? Stop, UnmetCareNeed? Need, ImmutableArray<WorkingPlace> Places, int At = -1, HandEdit? Edit = null, WhatIf? Then = null)
{
    public WorkingPlace? Place => At >= 0 && At < Places.Length ? Places[At] : null;

    /// <summary>Whether places light up while it is held.</summary>
    public bool IsCarried => Stop is not null || Need is not null;

    /// <summary>The change that puts it on a nurse's day.</summary>
    public HandEdit? To(string nurse, LocalDate day, int position) => this switch
    {
        { Stop: { } stop } => new HandEdit.Move(stop.Visit.Id, nurse, day, position),
        { Need: { } need } => new HandEdit.Place(need.Key, nurse, day, position),
        _ => null,
    };

    /// <summary>The best place of a nurse's day; -1 for none.</summary>
    public int BestOn(string nurse, LocalDate day) => IndexOf(Places.Where(p => p.Nurse == nurse && p.Day == day).MinBy(p => p.Rank));

    /// <summary>The place a key leads to: up and down one by one, left and right by days, home to the best.</summary>
    public int Step(string key) => Places.IsEmpty ? -1 : key switch
    {
        "ArrowDown" => At < 0 ? IndexOf(Places.MinBy(p => p.Rank)) : (At + 1) % Places.Length,
        "ArrowUp" => At < 0 ? IndexOf(Places.MinBy(p => p.Rank)) : (At + Places.Length - 1) % Places.Length,
        "ArrowRight" => OtherDay(days => days.Where(d => d > From).DefaultIfEmpty(days[0]).First()),
        "ArrowLeft" => OtherDay(days => days.Where(d => d < From).DefaultIfEmpty(days[^1]).Last()),
        "Home" => IndexOf(Places.MinBy(p => p.Rank)),
        _ => At,
    };

    /// <summary>The day a step to the left or right starts from.</summary>
    private LocalDate From => Place?.Day ?? Stop?.Visit.Day ?? LocalDate.MinIsoValue;

    private int OtherDay(Func<ImmutableArray<LocalDate>, LocalDate> choose)
    {
        LocalDate day = choose([.. Places.Select(p => p.Day).Distinct().Order()]);
        return IndexOf(Places.Where(p => p.Day == day).MinBy(p => p.Rank));
    }

    private int IndexOf(WorkingPlace? place) => place is null ? -1 : Places.IndexOf(place);
}
