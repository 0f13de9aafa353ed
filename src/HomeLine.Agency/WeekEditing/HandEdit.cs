using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What a coordinator asks of the working draft.</summary>
public abstract record HandEdit
{
    private HandEdit()
    {
    }

    /// <summary>A visit goes to a nurse's day, after so many of her visits.</summary>
    public sealed record Move(string Visit, string Nurse, LocalDate Day, int Position) : HandEdit;

    /// <summary>An unmet need, by its key on the list, gets a visit, or joins the patient's visit of that day.</summary>
    public sealed record Place(string Need, string Nurse, LocalDate Day, int Position) : HandEdit;

    /// <summary>A visit is taken out; its care goes to the list of unmet needs.</summary>
    public sealed record TakeOut(string Visit) : HandEdit;

    /// <summary>Another second person comes to a visit of two people; everything else of it stays.</summary>
    public sealed record ChangeSecond(string Visit, string Second) : HandEdit;

    /// <summary>A supervisor goes along on the visit of a nurse who works under supervision, and the visit is pinned.</summary>
    public sealed record GoAlong(string Visit, string Supervisor) : HandEdit;

    /// <summary>Nobody goes along any more.</summary>
    public sealed record GoAlone(string Visit) : HandEdit;

    /// <summary>Two visits change places.</summary>
    public sealed record Swap(string Visit, string With) : HandEdit;

    /// <summary>Two nurses change their visits of one day.</summary>
    public sealed record SwapDays(string Nurse, string With, LocalDate Day) : HandEdit;

    /// <summary>A visit stays where it is until the pin is taken out: people do not push it, the planner does not move it.</summary>
    public sealed record Pin(string Visit) : HandEdit;

    /// <summary>The pin is taken out.</summary>
    public sealed record Unpin(string Visit) : HandEdit;

    /// <summary>The draft becomes the published week again.</summary>
    public sealed record StartOver : HandEdit;
}
