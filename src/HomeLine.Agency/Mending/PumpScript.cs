using System.Collections.Immutable;

namespace HomeLine.Agency.Mending;

/// <summary>
/// What is read over the phone when a pump sounds an alarm: only what every caregiver was taught, never a setting of the pump. Common practice, no source; a
/// default for the clinical lead to sign. The sheet that came with the pump goes before these lines.
/// </summary>
public static class PumpScript
{
    public static ImmutableArray<string> For(AlarmKind alarm, bool mustNotStop)
    {
        ImmutableArray<string> steps = alarm switch
        {
            AlarmKind.Air => ["Close the clamp nearest to the body.", "Look along the tubing. Follow the pump's own sheet for air; do not disconnect anything from the patient to do it.", "If air went into the patient: close the clamp, lie on the left side, call the emergency number."],
            AlarmKind.Blocked => ["Look for a closed clamp and for a kink, from the pump to the body.", "Do not force anything through the line and do not flush against resistance."],
            AlarmKind.Battery => ["Put in new batteries of the kind the pump's sheet names, or plug it in.", "Say whether the pump runs again."],
            AlarmKind.BagEmpty => ["Read what is left in the bag and what the label says.", "Change the bag only when you were taught to and the next one is there."],
            _ => ["Read aloud what stands on the pump's display, word for word.", "Follow the pump's own sheet. Do not change any setting."],
        };
        return mustNotStop
            ? ["This medicine must not stop. If it has stopped, even for a moment, say so now.", "Keep the back-up pump and bag beside you.", .. steps]
            : steps;
    }
}
