using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Agency.WeekEditing;

/// <summary>What counts as heavy and as an evening when load is compared; policy values.</summary>
/// <param name="HeavyFrom">Minutes in the home from which a visit is heavy.</param>
/// <param name="Evening">A visit that starts from then on makes an evening.</param>
/// <param name="WeeksBack">Published weeks looked back on.</param>
public sealed record LoadRules(int HeavyFrom, LocalTime Evening, int WeeksBack)
{
    public static LoadRules Of(PolicyBook policy, LocalDate on) => new(
        (int)policy.ValueOf("visit.heavy.from", on),
        LocalTime.Midnight.PlusMinutes((long)(policy.ValueOf("evening.from", on) * 60)),
        (int)policy.ValueOf("fairness.weeks", on));

    /// <summary>Tenths of a visit: an hour counts 10, every further half hour 5; a short visit counts as an hour, since the door costs the same. Our own default.</summary>
    public static int Weight(int minutes) => 10 + (5 * Math.Max(0, (minutes - 60 + 29) / 30));
}
