using System.Collections.Immutable;
using HomeLine.Agency.Roster;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.WeekPlanning;

/// <summary>
/// What of a published week is in the ledger already. A visit with a signed record of the same patient and week is made, whenever in the week that was. Of
/// care recorded without one, each entry of a day stands for the first planned care of its kind on that day that it fits, and for no other.
/// </summary>
internal sealed class CareDone
{
    private readonly HashSet<(PatientId Patient, string Visit, LocalDate Week)> signed;
    private readonly Dictionary<(PatientId, LineEventKind, LocalDate), List<LineEvent>> entries;

    private CareDone(HashSet<(PatientId, string, LocalDate)> signed, Dictionary<(PatientId, LineEventKind, LocalDate), List<LineEvent>> entries) =>
        (this.signed, this.entries) = (signed, entries);

    /// <param name="roster">The roster as it stands.</param>
    /// <param name="from">The first day looked at; what was recorded before it stands for nothing planned.</param>
    public static CareDone Of(AgencyRoster roster, LocalDate from)
    {
        SignedVisit[] planned = [.. SignedVisit.Standing(roster.SignedVisits).Where(v => v.Visit is not null)];
        var known = planned.SelectMany(v => v.Events).ToHashSet();
        var voided = roster.Events.Select(e => e.Voids).OfType<EventId>().ToHashSet();
        var entries = new Dictionary<(PatientId, LineEventKind, LocalDate), List<LineEvent>>();
        foreach (LineEvent entry in roster.Events)
        {
            if (entry.Performed is not { } when || when.Date < from || entry.Certainty == Certainty.Guess || known.Contains(entry.Id) || voided.Contains(entry.Id)) continue;
            var key = (entry.Patient, entry.Kind, when.Date);
            (entries.TryGetValue(key, out List<LineEvent>? same) ? same : entries[key] = []).Add(entry);
        }

        return new CareDone([.. planned.Select(v => (v.Patient, v.Visit!, AgencyAtHand.WeekOf(v.Day)))], entries);
    }

    /// <summary>Whether the visit has a signed record.</summary>
    public bool IsSigned(WeekVisit visit) => signed.Contains((visit.Patient, visit.Id, AgencyAtHand.WeekOf(visit.Day)));

    /// <summary>Whether the ledger holds this care on that day; the entry that stands for it is then taken and stands for nothing else.</summary>
    public bool Takes(LineEvent foreseen)
    {
        if (!entries.TryGetValue((foreseen.Patient, foreseen.Kind, foreseen.Performed!.Value.Date), out List<LineEvent>? that)) return false;
        int at = that.FindIndex(e => Fits(e, foreseen));
        if (at < 0) return false;
        // A flush of two lumens is one entry and may stand for two planned flushes, so care by lumen is not used up.
        if (!IsByLumen(foreseen.Kind)) that.RemoveAt(at);
        return true;
    }

    private static bool Fits(LineEvent entry, LineEvent foreseen) =>
        (foreseen.Line is null || entry.Line is null || entry.Line == foreseen.Line)
        && (foreseen.Order is null || entry.Order is null || entry.Order == foreseen.Order)
        && (!IsByLumen(foreseen.Kind) || (Holds(entry.LumensUsed, foreseen.LumensUsed) && Holds(entry.ConnectorsChanged, foreseen.ConnectorsChanged)));

    private static bool IsByLumen(LineEventKind kind) => kind is LineEventKind.Flushed or LineEventKind.ConnectorChanged or LineEventKind.SetChanged;

    /// <summary>An entry that names no lumen is of them all.</summary>
    private static bool Holds(ImmutableArray<string> has, ImmutableArray<string> wants) => has.IsDefaultOrEmpty || wants.IsDefaultOrEmpty || wants.All(l => has.Contains(l));
}
