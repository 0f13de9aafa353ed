using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>A due window before and after something is recorded.</summary>
/// <param name="Before">As it stands; empty when it would appear.</param>
/// <param name="After">As it would stand; empty when it would disappear.</param>
public sealed record MovedWindow(DueWindow? Before, DueWindow? After);

/// <summary>What recording, or correcting, would do to the due dates: shown before it is saved, and equal to what shows afterwards.</summary>
public static class WhatWouldMove
{
    /// <summary>The windows that would appear, disappear or change their first or last moment, owner or standing.</summary>
    /// <param name="care">The patient as recorded.</param>
    /// <param name="entries">The entries about to be saved, corrections among them.</param>
    /// <param name="policy">The policy book.</param>
    /// <param name="now">The instant to answer for.</param>
    public static ImmutableArray<MovedWindow> If(PatientCare care, ImmutableArray<LineEvent> entries, PolicyBook policy, Instant now)
    {
        ArgumentNullException.ThrowIfNull(care);
        return Between(WhatIsDue.For(care, policy, now), WhatIsDue.For(care with { Events = care.Events.AddRange(entries) }, policy, now));
    }

    /// <summary>The windows in which two answers for one patient differ, for example under the policy as it is and as it would be.</summary>
    /// <param name="earlier">The answer as it stands.</param>
    /// <param name="later">The answer as it would stand.</param>
    public static ImmutableArray<MovedWindow> Between(CareAnswer earlier, CareAnswer later)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        var before = earlier.Windows.ToLookup(Key);
        var after = later.Windows.ToLookup(Key);
        var moved = ImmutableArray.CreateBuilder<MovedWindow>();
        foreach (var window in after.SelectMany(group => group))
            if (before[Key(window)].FirstOrDefault() is not { } old) moved.Add(new MovedWindow(null, window));
            else if (!IsSame(old, window)) moved.Add(new MovedWindow(old, window));
        foreach (var window in before.SelectMany(group => group))
            if (!after.Contains(Key(window))) moved.Add(new MovedWindow(window, null));
        return moved.ToImmutable();
    }

    /// <summary>Ordered days are told apart by their day, clocks by what they are for.</summary>
    private static (object, object?, string?, string?, LocalDate?) Key(DueWindow window) =>
        (window.Item, window.Line, window.Lumen, window.Order, window.Standing == WindowStanding.Ordered ? window.LastDay : null);

    private static bool IsSame(DueWindow old, DueWindow window) =>
        (old.Opens, old.LateFrom, old.Target, old.Owner, old.Standing) == (window.Opens, window.LateFrom, window.Target, window.Owner, window.Standing);
}
