using System.Collections.Immutable;
using HomeLine.LineCare.Clocks;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>
/// What a patient's ledger says, read once and kept: the story of every line and of the patient as a whole. It is never changed after it was
/// read; one more entry makes a new one. Good for every instant from its latest entry on.
/// </summary>
internal sealed class StorySoFar
{
    private readonly HashSet<EventId>? _voided;
    private readonly OrderedLedger.Place? _latest;

    private StorySoFar(LineStory[] lines, PatientStory patient, HashSet<EventId>? voided, OrderedLedger.Place? latest) =>
        (Lines, Patient, _voided, _latest) = (lines, patient, voided, latest);

    public LineStory[] Lines { get; }

    public PatientStory Patient { get; }

    /// <summary>Reads the whole ledger.</summary>
    public static StorySoFar Of(PatientCare care) => Of(care, Instant.MaxValue);

    /// <summary>Reads the ledger as it stood at an instant.</summary>
    public static StorySoFar Of(PatientCare care, Instant now)
    {
        var voided = OrderedLedger.Voided(care.Events);
        var lines = new LineStory[care.Lines.Length];
        for (var i = 0; i < lines.Length; i++) lines[i] = new LineStory(care.Lines[i], care.Zone);
        var patient = new PatientStory(care.Zone);
        OrderedLedger.Place? latest = null;
        foreach (var place in OrderedLedger.Places(care.Events, CivilDays.Of(care.Zone), voided))
        {
            if (place.At > now) break;
            Take(lines, patient, place.Entry, care.Caregivers, care.Zone);
            latest = place;
        }

        return new StorySoFar(lines, patient, voided, latest);
    }

    /// <summary>Whether nothing in it lies after an instant.</summary>
    public bool HoldsAt(Instant now) => _latest is not { } latest || latest.At <= now;

    /// <summary>The story with one more entry; empty when the ledger has to be read again, because the entry corrects another, was corrected
    /// already, or belongs before what was read last.</summary>
    public StorySoFar? Then(LineEvent entry, PatientCare care)
    {
        var place = new OrderedLedger.Place(entry, CivilDays.Of(care.Zone));
        if (entry.Voids is not null || _voided?.Contains(entry.Id) == true || (_latest is { } latest && latest.CompareTo(place) > 0)) return null;
        var lines = Array.ConvertAll(Lines, static line => line.Copy());
        var patient = Patient.Copy();
        Take(lines, patient, entry, care.Caregivers, care.Zone);
        return new StorySoFar(lines, patient, _voided, place);
    }

    private static void Take(
        LineStory[] lines, PatientStory patient, LineEvent entry, ImmutableArray<CaregiverValidation> caregivers, DateTimeZone zone)
    {
        var validated = PatientStory.IsValidated(entry, caregivers, zone);
        foreach (var line in lines) line.Take(entry, validated);
        patient.Take(entry);
    }
}
