using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Recording;

/// <summary>Our own nurse cannot have cared at home for somebody who was in hospital: a time before the last return home is asked about.</summary>
internal static class HospitalStays
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (entry.Performer != PerformerKind.Nurse || entry.Performed is not { } performed || entry.Certainty != Certainty.SeenByOurNurse) return;
        if (entry.Kind is LineEventKind.AdmittedToHospital or LineEventKind.ReturnedHome) return;
        LineEvent? admitted = null;
        foreach (var other in OrderedLedger.Read(entering.Care.Events, entering.Care.Zone, entering.Now))
        {
            if (other.Kind == LineEventKind.AdmittedToHospital) admitted = other;
            if (other.Kind != LineEventKind.ReturnedHome || other.Performed is not { } home) continue;
            if (IsBefore(performed, home) && (admitted?.Performed is not { } left || !IsBefore(performed, left)))
                entering.Ask(RecordingCodes.BeforeDischarge,
                    $"{Says.When(performed, entering.Care.Zone)} is before the patient came home on {Says.When(home, entering.Care.Zone)}: is the time right?");
            admitted = null;
        }
    }

    private static bool IsBefore(CareMoment one, CareMoment other) =>
        one is { At: { } at } && other is { At: { } then } ? at < then : one.Date < other.Date;
}
