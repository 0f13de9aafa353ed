using System.Collections.Immutable;

namespace HomeLine.Planning.Editing;

/// <summary>A place in a plan: a nurse's day and how many of her visits come before.</summary>
/// <param name="Nurse">Identifier of the nurse.</param>
/// <param name="Day">Day index.</param>
/// <param name="Position">Visits before it, 0 for the first; the moved visit itself does not count. Too large means last.</param>
public sealed record DayPlace(string Nurse, int Day, int Position);

/// <summary>What a person does to a plan by hand.</summary>
public abstract record HandMove
{
    private HandMove()
    {
    }

    /// <summary>A visit goes to another place. With another nurse on its own day it keeps its start if the road allows, else it starts at the first allowed minute.</summary>
    public sealed record Move(string Visit, DayPlace To) : HandMove;

    /// <summary>Care nobody covers gets a visit, or joins the visit this nurse pays the patient on that day.</summary>
    public sealed record PlaceCare(ImmutableArray<string> Tasks, DayPlace To) : HandMove;

    /// <summary>A visit is taken out; its care becomes unmet.</summary>
    public sealed record TakeOut(string Visit) : HandMove;

    /// <summary>
    /// Another second person comes to a visit, or one comes along where one nurse is enough; empty for nobody. It keeps its start if she can be there by then,
    /// else it starts when she can.
    /// </summary>
    public sealed record ChangeSecond(string Visit, string? Second) : HandMove;

    /// <summary>Two visits change places.</summary>
    public sealed record Swap(string Visit, string With) : HandMove;

    /// <summary>Two nurses change their visits of one day; starts stay where the road allows.</summary>
    public sealed record SwapDays(string Nurse, string With, int Day) : HandMove;
}
