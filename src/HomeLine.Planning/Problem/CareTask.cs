using System.Collections.Immutable;

namespace HomeLine.Planning.Problem;

/// <summary>
/// One occurrence of care for one patient. A visit is a set of tasks of the same patient on one day;
/// its minutes in the home are the largest <see cref="SetupMinutes"/> among them plus the sum of their <see cref="WorkMinutes"/>.
/// </summary>
public sealed record CareTask
{
    /// <summary>Identifier, unique in the problem.</summary>
    public required string Id { get; init; }

    /// <summary>The patient's identifier.</summary>
    public required string Patient { get; init; }

    /// <summary>Short text as shown, for example <c>dressing, PICC</c>.</summary>
    public required string Label { get; init; }

    /// <summary>Earliest start without a clinical trigger, plan minutes, included. Hard.</summary>
    public required int Opens { get; init; }

    /// <summary>First plan minute that is late. Soft: lateness is a cost of tier 1 or 2.</summary>
    public required int LateFrom { get; init; }

    /// <summary>Latest start at all, plan minutes, included; after it the task can only be left unmet. Hard.</summary>
    public int HardLatest { get; init; } = int.MaxValue;

    /// <summary>For a broken seal: when it is best done by, plan minutes; missing it is a cost below lateness.</summary>
    public int? TargetBy { get; init; }

    /// <summary>Allowed starts of the visit that does it, plan minutes, ascending and disjoint; empty for any. Hard (dose-anchored draws).</summary>
    public ImmutableArray<Span> StartSpans { get; init; } = [];

    /// <summary>Minutes of getting ready, shared within a visit.</summary>
    public required int SetupMinutes { get; init; }

    /// <summary>Minutes of the task itself.</summary>
    public required int WorkMinutes { get; init; }

    /// <summary>Skills the nurse must have.</summary>
    public ImmutableArray<string> Skills { get; init; } = [];

    /// <summary>Words by which nurses have caps on their visits (<see cref="Nurse.Caps"/>), for example <c>SOC</c> or <c>heavy</c>.</summary>
    public ImmutableArray<string> Kinds { get; init; } = [];

    /// <summary>Critical care: unmet or late counts in the first tier.</summary>
    public bool Critical { get; init; }

    /// <summary>Item weight times patient factor, for the risk cost of lateness.</summary>
    public required int Weight { get; init; }

    /// <summary>
    /// The task of the same chain that comes before, when this one repeats. One that is not in the problem is ignored: it is done, and
    /// <see cref="Opens"/> and <see cref="LateFrom"/> already tell its effect.
    /// </summary>
    public string? After { get; init; }

    /// <summary>Least minutes from the start of <see cref="After"/> to the start of this one. Hard.</summary>
    public int MinGap { get; init; }

    /// <summary>Most minutes from the start of <see cref="After"/> before this one is late; soft like <see cref="LateFrom"/>. For a date clock the caller also sets <see cref="GapInDays"/>.</summary>
    public int MaxGap { get; init; } = int.MaxValue;

    /// <summary>Gaps count civil days (day index difference, 1,440 each) rather than minutes.</summary>
    public bool GapInDays { get; init; }

    /// <summary>Tasks with the same group must be done in the same visit.</summary>
    public string? Together { get; init; }

    /// <summary>The specimen must reach a drop point: most minutes from the visit's start to the drop; empty when none.</summary>
    public int? DrawToDropMinutes { get; init; }

    /// <summary>
    /// When set, this is a wish and no need: left out it costs so many duty points, and no points of lateness. Such a task has no late minute (<see cref="LateFrom"/> is
    /// <see cref="int.MaxValue"/>).
    /// </summary>
    public int? LeftOutDuty { get; init; }

    /// <summary>A visit for safety: never blocked by the weekly allowance.</summary>
    public bool Safety { get; init; }

    /// <summary>The patient's usual day for it, day index; another day costs one point in the last tier. Empty when there is no habit.</summary>
    public int? UsualDay { get; init; }
}
