using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>A nurse as the planner sees one.</summary>
public sealed record Nurse
{
    /// <summary>Identifier, for example <c>N1</c>.</summary>
    public required string Id { get; init; }

    /// <summary>Name as shown in reasons.</summary>
    public required string Name { get; init; }

    /// <summary>Place index of the nurse's home: first and last leg start and end there.</summary>
    public required int Home { get; init; }

    /// <summary>Working days, ascending; at most one a day.</summary>
    public required ImmutableArray<Shift> Shifts { get; init; }

    /// <summary>Skill words, for example <c>PICC</c>, <c>PORT</c>.</summary>
    public required ImmutableArray<string> Skills { get; init; }

    /// <summary>Skill words whose sign-off ends within the horizon; a word not named here does not lapse.</summary>
    public ImmutableArray<SkillEnd> SkillEnds { get; init; } = [];

    /// <summary>Licences with their last valid day index (included; <see cref="int.MaxValue"/> when beyond the horizon).</summary>
    public required ImmutableArray<Licence> Licences { get; init; }

    /// <summary>Traits a patient may require, exclude or prefer, for example <c>female</c>, <c>allergy:cat</c>, <c>language:vi</c>.</summary>
    public ImmutableArray<string> Traits { get; init; } = [];

    /// <summary>Most visits a day.</summary>
    public int MaxVisitsADay { get; init; } = int.MaxValue;

    /// <summary>Most visits of some kinds of care, a day or a week.</summary>
    public ImmutableArray<VisitCap> Caps { get; init; } = [];

    /// <summary>Whether she is signed off for a skill on a day.</summary>
    /// <param name="skill">The skill word.</param>
    /// <param name="day">Day index.</param>
    public bool IsSignedOff(string skill, int day) => Skills.Contains(skill) && SkilledThrough(skill) >= day;

    /// <summary>Last day index on which a skill she has counts, included; <see cref="int.MaxValue"/> when it does not lapse.</summary>
    /// <param name="skill">The skill word.</param>
    public int SkilledThrough(string skill)
    {
        foreach (SkillEnd end in SkillEnds)
        {
            if (end.Skill == skill) return end.LastDay;
        }

        return int.MaxValue;
    }
}

/// <summary>A sign-off that ends.</summary>
/// <param name="Skill">The skill word.</param>
/// <param name="LastDay">Last day index on which it counts, included.</param>
public sealed record SkillEnd(string Skill, int LastDay);

/// <summary>A licence to practise in one state.</summary>
/// <param name="State">The state where the patient is at the time of the visit.</param>
/// <param name="LastDay">Last valid day index, included.</param>
public sealed record Licence(string State, int LastDay);

/// <summary>One working day. The nurse leaves home at or after <see cref="From"/> and is back home by <see cref="To"/>.</summary>
/// <param name="Day">Day index.</param>
/// <param name="From">Start, plan minutes.</param>
/// <param name="To">End of paid time without overtime, plan minutes.</param>
/// <param name="OvertimeTo">Latest return with overtime, plan minutes; equal to <paramref name="To"/> when none is allowed.</param>
/// <param name="LunchMinutes">Length of the break, 0 for none.</param>
/// <param name="LunchFrom">Earliest start of the break, plan minutes.</param>
/// <param name="LunchTo">Latest start of the break, plan minutes.</param>
/// <param name="OnCall">On call rather than on a route: only urgent answers and mends may use it.</param>
public sealed record Shift(
    int Day,
    int From,
    int To,
    int OvertimeTo,
    int LunchMinutes = 0,
    int LunchFrom = 0,
    int LunchTo = 0,
    bool OnCall = false)
{
    /// <summary>People points when she makes a visit that day, because others are more due for such a day; 0 or more.</summary>
    public int TurnPoints { get; init; }
}
