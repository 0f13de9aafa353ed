using System.Collections.Immutable;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Roster;

/// <summary>What stands against storing a change: repeated rows, rows of nobody, and entries of the ledger that would be rewritten.</summary>
internal static class RosterConflicts
{
    public static ImmutableArray<RowConflict> In(RosterChange change)
    {
        HashSet<PatientId> patients = [.. change.Patients.After.Select(p => p.Id)];
        HashSet<LineId> lines = [.. change.Lines.After.Select(l => l.Id)];
        return
        [
            .. Repeated(change.Nurses), .. Repeated(change.Patients), .. Repeated(change.Lines), .. Repeated(change.Infusions),
            .. Repeated(change.Events), .. Repeated(change.Orders), .. Repeated(change.Caregivers), .. Repeated(change.Holds),
            .. Repeated(change.Exceptions), .. Repeated(change.OutsideCare), .. Repeated(change.Policy),
            .. change.Events.Changed.Select(e => Conflict(change.Events, e.Key, "event-rewritten",
                "An entry of the ledger is never changed.", "Add a new entry that voids this one.")),
            .. change.Policy.Changed.Select(p => Conflict(change.Policy, p.Key, "policy-rewritten",
                "A policy rule that counts from a day is never changed.", "Draft the change in the policy library, from today or a later day.")),
            .. LatePolicy(change),
            .. Strangers(change.Lines, l => l.Patient, _ => null),
            .. Strangers(change.Infusions, i => i.Patient, i => i.Line),
            .. Strangers(change.Events, e => e.Patient, e => e.Line),
            .. Strangers(change.Orders, o => o.Patient, o => o.Line),
            .. Strangers(change.Caregivers, c => c.Patient, c => c.Line),
            .. Strangers(change.Holds, h => h.Patient, _ => null),
            .. Strangers(change.Exceptions, e => e.Patient, _ => null),
            .. Strangers(change.OutsideCare, o => o.Patient, o => o.Line),
            .. UnknownVoids(change),
        ];

        IEnumerable<RowConflict> Strangers<T>(RowChanges<T> rows, Func<T, PatientId> patient, Func<T, LineId?> line)
        {
            foreach (T row in (IEnumerable<T>)[.. rows.Added, .. rows.Changed.Select(c => c.After)])
            {
                if (!patients.Contains(patient(row)))
                    yield return Conflict(rows, rows.KeyOf(row), "patient-unknown",
                        $"There is no patient {patient(row)}.", "Add the patient, or correct the identifier.");
                if (line(row) is { } id && !lines.Contains(id))
                    yield return Conflict(rows, rows.KeyOf(row), "line-unknown",
                        $"There is no line {id}.", "Add the line, or correct the identifier.");
            }
        }
    }

    private static IEnumerable<RowConflict> Repeated<T>(RowChanges<T> rows) =>
        rows.Repeated.Select(key => Conflict(rows, key, "row-repeated",
            $"The {rows.Kind} {key} appears more than once.", "Keep the one that is right."));

    /// <summary>A roster brings its policy along once, with its first patients; from then on policy changes by draft, preview and approval.</summary>
    private static IEnumerable<RowConflict> LatePolicy(RosterChange change) =>
        change.Patients.Unchanged.IsEmpty && change.Patients.Changed.IsEmpty && change.Patients.LeftAlone.IsEmpty
            ? []
            : change.Policy.Added.Select(p => Conflict(change.Policy, RosterKeys.Of(p), "policy-by-library",
                "A policy does not change by import once the agency has patients.", "Draft it in the policy library, where everybody sees which dates move."));

    private static IEnumerable<RowConflict> UnknownVoids(RosterChange change)
    {
        var known = change.Events.After.Select(e => e.Id).ToHashSet();
        return change.Events.Added.Where(e => e.Voids is { } old && !known.Contains(old)).Select(e =>
            Conflict(change.Events, e.Id.Value, "voided-entry-unknown",
                $"There is no entry {e.Voids} to void.", "Correct the identifier of the voided entry."));
    }

    private static RowConflict Conflict<T>(RowChanges<T> rows, string key, string code, string sentence, string action) =>
        new(rows.Kind, key, new Refusal(code, sentence, action));
}
