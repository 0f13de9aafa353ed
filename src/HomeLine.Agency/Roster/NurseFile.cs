using System.Collections.Immutable;
using NodaTime;

namespace HomeLine.Agency.Roster;

/// <summary>A nurse of the agency: what she may do, where she may do it, and when she works.</summary>
public sealed record NurseFile
{
    /// <summary>For example <c>N1</c>.</summary>
    public required string Id { get; init; }
    public required string Name { get; init; }

    /// <summary>Credential as the licence says: <c>RN</c> or <c>LPN</c>.</summary>
    public required string Credential { get; init; }
    public required MapPoint Home { get; init; }
    public string Phone { get; init; } = "";
    public ImmutableArray<string> Skills { get; init; } = [];

    /// <summary>Sign-offs that end, by skill word; a word not named here does not lapse.</summary>
    public ImmutableArray<SignOffEnd> SignOffs { get; init; } = [];
    public ImmutableArray<StateLicence> Licences { get; init; } = [];

    /// <summary>Traits patients may require or exclude, for example <c>female</c>, <c>allergy:cat</c>, <c>language:es</c>.</summary>
    public ImmutableArray<string> Traits { get; init; } = [];
    public ImmutableArray<WorkingTime> Week { get; init; } = [];
    public ImmutableArray<Leave> Leaves { get; init; } = [];
    public int LunchMinutes { get; init; }
    public int OvertimeMinutes { get; init; }
    public int MaxVisitsADay { get; init; } = 8;

    /// <summary>The most visits of some kinds she makes, where the agency agreed that with her.</summary>
    public ImmutableArray<KindCap> VisitCaps { get; init; } = [];
    public string Note { get; init; } = "";
}

/// <summary>A licence to practise in one state, valid through a day, included; empty when no end is recorded.</summary>
/// <param name="State">The state that issued it.</param>
/// <param name="ValidThrough">Last valid day, included.</param>
/// <param name="Compact">A multistate licence: it also covers the other states of the agency's list of compact states.</param>
public sealed record StateLicence(string State, LocalDate? ValidThrough, bool Compact = false);

/// <summary>The last day a sign-off for a skill counts, included.</summary>
public sealed record SignOffEnd(string Skill, LocalDate ValidThrough);

/// <summary>The most visits of one kind a nurse makes.</summary>
/// <param name="Kind">A skill word the care asks for, for example <c>SOC</c>, or <see cref="Heavy"/>.</param>
/// <param name="Most">Most visits, 0 or more.</param>
/// <param name="AWeek">Counted over the week, Monday to Sunday; otherwise over the day.</param>
public sealed record KindCap(string Kind, int Most, bool AWeek = false)
{
    /// <summary>The word for care that takes long (policy value <c>visit.heavy.from</c>).</summary>
    public const string Heavy = "heavy";
}

/// <summary>Usual working time on one weekday, branch time.</summary>
public sealed record WorkingTime(IsoDayOfWeek Weekday, LocalTime From, LocalTime To, bool OnCall = false);

/// <summary>Days off, both included.</summary>
public sealed record Leave(LocalDate From, LocalDate Through, string Reason)
{
    /// <summary>On the first day she works until then, branch time; empty when she is off all day.</summary>
    public LocalTime? FromTime { get; init; }

    /// <summary>Whether she is off all day.</summary>
    public bool IsAllDay(LocalDate date) => date >= From && date <= Through && (FromTime is null || date > From);
}
