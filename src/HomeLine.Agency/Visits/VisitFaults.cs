using System.Collections.Immutable;
using HomeLine.Agency.Caregivers;
using HomeLine.LineCare;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>What is missing or cannot be in a visit as written down, each at its field. Pure.</summary>
internal static class VisitFaults
{
    public static ImmutableArray<VisitFault> Of(VisitEntry entry, PatientCare care, VisitTimes? times, ImmutableArray<LineId> linesIn, Instant now)
    {
        var faults = new List<VisitFault>();
        Times(entry, times, now, faults);
        if (entry.Visit is null && string.IsNullOrWhiteSpace(entry.UnplannedBecause))
            faults.Add(new VisitFault("unplanned", VisitCodes.UnplannedWithoutReason, "This visit was not planned: say in a few words why it was made."));
        if (!entry.SignsAsked)
            faults.Add(new VisitFault("signs", VisitCodes.SignsUnasked, "Ask the symptom questions, then say that there was none or which there were."));
        foreach (ItemEntry item in entry.Items) Item(item, entry, faults);
        Sites(entry, linesIn, faults);
        foreach (DrawEntry draw in entry.Draws)
            if (draw.Line is not null && draw.Lumen is null)
                faults.Add(new VisitFault($"draw {draw.Order}", RecordingCodes.LumenMissing, "Through which lumen was it drawn?"));
        Teaching(entry, care, faults);
        if (entry.Incident != Incident.None && string.IsNullOrWhiteSpace(entry.IncidentText))
            faults.Add(new VisitFault("incident", VisitCodes.IncidentWithoutWords, "Say in a few words what happened and who was told."));
        return [.. faults];
    }

    private static void Times(VisitEntry entry, VisitTimes? times, Instant now, List<VisitFault> faults)
    {
        if (times is null)
        {
            faults.Add(new VisitFault("arrived", VisitCodes.ArrivalMissing, "When did you arrive?"));
            return;
        }

        if (times.Arrived > now) faults.Add(new VisitFault("arrived", VisitCodes.InTheFuture, "The arrival lies in the future: record the visit once it is made."));
        if (times.Left > now) faults.Add(new VisitFault("left", VisitCodes.InTheFuture, "You have not left yet: leave this empty, or correct the time."));
        foreach (ItemEntry item in entry.Items.Where(i => i.IsDone && i.At is not null && times.At(i.At) > now))
            faults.Add(new VisitFault($"item {item.Key}", RecordingCodes.InTheFuture, $"{item.Label} would be done in the future: correct the time."));
    }

    private static void Item(ItemEntry item, VisitEntry entry, List<VisitFault> faults)
    {
        string field = $"item {item.Key}";
        if (item.IsPlanned && item.Standing == ItemStanding.Unsaid)
            faults.Add(new VisitFault(field, VisitCodes.ItemUnsaid, $"{item.Label}: done or not done?"));
        if (item.Standing == ItemStanding.NotDone && item.Why is null)
            faults.Add(new VisitFault(field, VisitCodes.WhyMissing, $"{item.Label} was not done: choose why."));
        if (item is { Standing: ItemStanding.NotDone, Why: NotDoneReason.Other } && string.IsNullOrWhiteSpace(item.WhyText))
            faults.Add(new VisitFault(field, VisitCodes.WhyMissing, $"{item.Label} was not done for another reason: say which."));
        if (item is { IsDone: true, Item: CareItem.Labs } && !entry.Draws.Any(d => d.Order == item.Order))
            faults.Add(new VisitFault(field, VisitCodes.DrawMissing, $"{item.Label}: say how and when it was drawn."));
    }

    /// <summary>A line that was cared for is looked at; whether anything was done on it at all is another matter.</summary>
    private static void Sites(VisitEntry entry, ImmutableArray<LineId> linesIn, List<VisitFault> faults)
    {
        foreach (LineId line in entry.Items.Where(i => i.IsDone).Select(i => i.Line).OfType<LineId>().Distinct())
            if (linesIn.Contains(line) && entry.Lines.FirstOrDefault(l => l.Line == line) is not { Looked: true } && !IsTakenOut(entry, line))
                faults.Add(new VisitFault($"line {line}", VisitCodes.SiteUnsaid, $"{line}: what did the site look like? Nothing found is an answer too."));
    }

    private static bool IsTakenOut(VisitEntry entry, LineId line) => entry.Lines.Any(l => l.Line == line && l.RemovedLengthCm is not null);

    private static void Teaching(VisitEntry entry, PatientCare care, List<VisitFault> faults)
    {
        for (int i = 0; i < entry.Teaching.Length; i++)
        {
            TeachBack taught = entry.Teaching[i];
            if (string.IsNullOrWhiteSpace(taught.Person)) faults.Add(new VisitFault($"teach {i}", VisitCodes.PersonMissing, "Who was taught?"));
            if (taught is { Validate: true, Level: not TeachLevel.Independent })
                faults.Add(new VisitFault($"teach {i}", VisitCodes.TeachingNotIndependent, "A person is validated once the task was done back alone: take the tick away, or correct how far it came."));
            if (taught.Validate && (!ValidateCaregiver.Tasks.Contains(taught.Item) || (taught.Line is { } line && care.Lines.All(l => l.Id != line))))
                faults.Add(new VisitFault($"teach {i}", "task-missing", "Nobody can be validated for this task here."));
        }
    }
}
