using HomeLine.LineCare.Clocks;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;

namespace HomeLine.LineCare.Recording;

/// <summary>Who did it and by what order. What happened stays a fact: it is asked about and kept, never thrown away.</summary>
internal static class Permission
{
    public static void Check(Entering entering)
    {
        var entry = entering.Entry;
        if (!PatientStory.IsValidated(entry, entering.Care.Caregivers, entering.Care.Zone))
            entering.Tell(DecisionCodes.UnverifiedCare,
                $"Done{Says.By(entry)}, not validated for it on this line: kept as unverified, and a nurse looks.");
        var (wanted, what) = entry.Kind switch
        {
            LineEventKind.Removed => ((Func<CareOrder, bool>?)(order => order.Kind == OrderKind.Removal), "the removal of this line"),
            LineEventKind.BloodCultureDrawn => (order => order.Kind is OrderKind.Labs, "a blood culture"),
            LineEventKind.LumenCleared when entry.Performer == PerformerKind.Nurse => (order => order.Id == entry.Order, "clearing this lumen"),
            _ => (null, ""),
        };
        if (wanted is not null && entry.Performer != PerformerKind.Outside && !entering.HasOrder(wanted))
            entering.Ask(RecordingCodes.WithoutOrder, $"No active order covers {what}: which order was it done under?");
    }
}
