using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using HomeLine.LineCare.Policy;
using NodaTime;

namespace HomeLine.Exchange.History;

/// <summary>What the rows have said so far.</summary>
internal sealed class HistoryDraft(PolicyBook policy, DateTimeZone zone, Instant now)
{
    public static readonly PatientId Patient = new("example");

    public List<HistoryFault> Faults { get; } = [];
    public DateTimeZone Zone { get; set; } = zone;
    public LocalDateTime? NowLocal { get; set; }
    public LocalDate? CareStartedOn { get; set; }
    public LocalDate? BornOn { get; set; }
    public RiskFactors Risks { get; set; }
    public List<Line> Lines { get; } = [];
    public List<Infusion> Infusions { get; } = [];
    public List<LineEvent> Events { get; } = [];
    public List<CareOrder> Orders { get; } = [];
    public List<CareException> Exceptions { get; } = [];
    public List<CaregiverValidation> Caregivers { get; } = [];
    public List<OutsideCare> Outside { get; } = [];
    public List<Hold> Holds { get; } = [];
    public List<PolicyRule> Rules { get; } = [];
    public List<LocalDate> Visits { get; } = [];

    public PolicyBook Policy => policy;

    /// <summary>The line a row speaks of: the one it names, or the only one.</summary>
    public LineId LineNamed(string? name)
    {
        if (name is not null)
            return Lines.Exists(line => line.Id.Value == name)
                ? new LineId(name)
                : throw new RowUnreadableException($"There is no line {name}. A row “line {name}: PICC, lumens A” would make it.");
        return Lines.Count switch
        {
            1 => Lines[0].Id,
            0 => throw new RowUnreadableException("No line is named yet. Begin with a row such as “line PICC, lumens A”."),
            _ => throw new RowUnreadableException($"There are {Lines.Count} lines: say which, for example “on {Lines[0].Id}”."),
        };
    }

    /// <summary>What only the whole can show: a rule that policy may not hold.</summary>
    public void Check()
    {
        if (Rules.Count == 0) return;
        foreach (string problem in PolicyCheck.Problems(policy.With(Rules)).Except(PolicyCheck.Problems(policy)))
            Faults.Add(new HistoryFault(0, "policy", problem));
    }

    public LineHistory Finish()
    {
        Instant at = NowLocal is { } local ? local.InZoneLeniently(Zone).ToInstant() : now;
        // An entry without a date, and without a word on when it was written down, is known by now.
        LineEvent[] all = [.. Events.Select(entry => entry.RecordedAt == Instant.MinValue ? entry with { RecordedAt = at } : entry)];
        LineEvent[] known = [.. all.Where(entry => entry.RecordedAt <= at)];
        return new LineHistory(
            new PatientCare
            {
                Patient = Patient,
                Zone = Zone,
                CareStartedOn = CareStartedOn ?? FirstDay(at),
                BornOn = BornOn,
                Risks = Risks,
                Lines = [.. Lines],
                Infusions = [.. Infusions],
                Events = [.. known],
                Orders = [.. Orders],
                Exceptions = [.. Exceptions],
                Caregivers = [.. Caregivers],
                Outside = [.. Outside],
                Holds = [.. Holds],
            },
            policy.With(Rules),
            at,
            [.. Visits.Order()],
            [.. all.Where(entry => entry.RecordedAt > at)]);
    }

    /// <summary>Without a start of care the first dated entry stands for it.</summary>
    private LocalDate FirstDay(Instant at) =>
        Events.Select(entry => entry.Performed?.Date).OfType<LocalDate>().DefaultIfEmpty(at.InZone(Zone).Date).Min();
}
