using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Travel;
using NodaTime;

namespace HomeLine.LineCare;

/// <summary>Facts about the patient that raise a seal class or change materials.</summary>
[Flags]
public enum RiskFactors
{
    /// <summary>None known.</summary>
    None = 0,

    /// <summary>On parenteral nutrition.</summary>
    ParenteralNutrition = 1,

    /// <summary>Low white count or transplant.</summary>
    LowWhiteCount = 2,

    /// <summary>A line infection within the last 90 days.</summary>
    RecentInfection = 4,

    /// <summary>An inotrope is running.</summary>
    InotropeRunning = 8,

    /// <summary>Allergic to chlorhexidine: no material containing it.</summary>
    ChlorhexidineAllergy = 16,

    /// <summary>Past skin injury from adhesive: no early change unless the seal is broken.</summary>
    AdhesiveInjury = 32,
}

/// <summary>A person's validation for one item of care on this patient.</summary>
/// <param name="Patient">The patient cared for.</param>
/// <param name="Person">Who, for example <c>spouse</c> or <c>self</c>.</param>
/// <param name="Item">For which item.</param>
/// <param name="ValidThrough">Last day it is valid, included.</param>
/// <param name="Line">On which line; empty for every line of the patient.</param>
public sealed record CaregiverValidation(PatientId Patient, string Person, CareItem Item, LocalDate ValidThrough, LineId? Line = null);

/// <summary>A stretch during which no visit is planned although the clocks run on.</summary>
/// <param name="Patient">Who.</param>
/// <param name="From">First day, included.</param>
/// <param name="Through">Last day, included; empty while it lasts.</param>
/// <param name="Reason">Hospital, away, …</param>
/// <param name="Elsewhere">Where the patient stays meanwhile, when it is known; a stay that is known has a last day.</param>
public sealed record Hold(PatientId Patient, LocalDate From, LocalDate? Through, string Reason, Elsewhere? Elsewhere = null)
{
    /// <summary>The days elsewhere; empty when the place or the last day is not known.</summary>
    public Stay? Stay => Elsewhere is { } place && Through is { } last ? new Stay(From, last, place.Zone, place.State) : null;
}

/// <summary>A patient-level exception to policy, with its owner and end.</summary>
/// <param name="Patient">For whom.</param>
/// <param name="RuleId">Which rule.</param>
/// <param name="Value">The value instead, in the rule's unit.</param>
/// <param name="Owner">The licensed person who answers for it.</param>
/// <param name="Through">Last day it applies, included.</param>
/// <param name="Reason">Why.</param>
public sealed record CareException(PatientId Patient, string RuleId, decimal Value, string Owner, LocalDate Through, string Reason);

/// <summary>Care that a clinic, hospital or other agency is expected to give. It is not planned as a visit until the report is overdue.</summary>
/// <param name="Patient">For whom.</param>
/// <param name="Line">On which line.</param>
/// <param name="On">The day it is expected.</param>
/// <param name="ReportBy">From this instant without a report the items fall back to the nurse.</param>
/// <param name="Where">Who is expected to do it.</param>
/// <param name="Items">The items expected, for example the dressing and the connector.</param>
public sealed record OutsideCare(PatientId Patient, LineId Line, LocalDate On, Instant ReportBy, string Where, ImmutableArray<CareItem> Items);

/// <summary>Everything the clocks need to know about one patient, and nothing else.</summary>
/// <remarks>The ledger is read once and the reading kept beside it, so that asking again costs only the clocks.</remarks>
public sealed record PatientCare
{
    private Kept _story;

    /// <summary>The patient.</summary>
    public required PatientId Patient { get; init; }

    /// <summary>Zone of the patient's home; date clocks count its civil days.</summary>
    public required DateTimeZone Zone
    {
        get;
        init => (field, _story) = (value, default);
    }

    /// <summary>Day care started (day 1 of the plan of care).</summary>
    public required LocalDate CareStartedOn { get; init; }

    /// <summary>Birth date; empty switches age rules off and is reported as a decision.</summary>
    public LocalDate? BornOn { get; init; }

    /// <summary>What raises urgency or changes materials.</summary>
    public RiskFactors Risks { get; init; }

    /// <summary>The lines, those removed among them.</summary>
    public required ImmutableArray<Line> Lines
    {
        get;
        init => (field, _story) = (value, default);
    }

    /// <summary>What runs through them.</summary>
    public ImmutableArray<Infusion> Infusions { get; init; } = [];

    /// <summary>The ledger, in any order.</summary>
    public required ImmutableArray<LineEvent> Events
    {
        get;
        init => (field, _story) = (value, default);
    }

    /// <summary>Orders, active and past.</summary>
    public ImmutableArray<CareOrder> Orders { get; init; } = [];

    /// <summary>Exceptions in force or past.</summary>
    public ImmutableArray<CareException> Exceptions { get; init; } = [];

    /// <summary>Who is validated for what.</summary>
    public ImmutableArray<CaregiverValidation> Caregivers
    {
        get;
        init => (field, _story) = (value, default);
    } = [];

    /// <summary>Care expected from elsewhere.</summary>
    public ImmutableArray<OutsideCare> Outside { get; init; } = [];

    /// <summary>Holds, past and present.</summary>
    public ImmutableArray<Hold> Holds { get; init; } = [];

    /// <summary>The patient with one more ledger entry. An entry that comes after all the others is added to what has been read already;
    /// a late entry or a correction has the ledger read again when it is next asked.</summary>
    /// <param name="entry">The entry, a correction too.</param>
    public PatientCare Recording(LineEvent entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var after = this with { Events = Events.Add(entry) };
        after._story = new Kept(_story.Story?.Then(entry, after));
        return after;
    }

    /// <summary>The lines that have not been taken out or exchanged by an instant.</summary>
    /// <param name="now">The instant to answer for.</param>
    public ImmutableArray<Line> InPlace(Instant now) => [.. ToldBy(now).Lines.Where(story => story.Ended is null).Select(story => story.Line)];

    /// <summary>What the ledger says as of an instant.</summary>
    internal StorySoFar ToldBy(Instant now)
    {
        var whole = _story.Story;
        if (whole is null) _story = new Kept(whole = StorySoFar.Of(this));
        return whole.HoldsAt(now) ? whole : StorySoFar.Of(this, now);
    }

    /// <summary>The reading of the ledger, if there is one. It follows from the rest, so it never tells two patients apart. Two threads may
    /// read at once; both read the same.</summary>
    private readonly record struct Kept(StorySoFar? Story)
    {
        public bool Equals(Kept other) => true;

        public override int GetHashCode() => 0;
    }
}
