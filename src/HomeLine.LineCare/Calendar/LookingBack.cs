using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Orders;
using NodaTime;

namespace HomeLine.LineCare.Calendar;

/// <summary>Replays the ledger entry by entry and notes what each did to every clock.</summary>
internal static class LookingBack
{
    public static ImmutableArray<PastEvent> Over(PatientCare care, Instant now)
    {
        var stories = care.Lines.Select(line => new LineStory(line, care.Zone)).ToArray();
        var states = Array.ConvertAll(stories, story => StateOf(story, care));
        var events = ImmutableArray.CreateBuilder<PastEvent>();
        foreach (var entry in OrderedLedger.Read(care.Events, care.Zone, now))
        {
            var touched = ImmutableArray.CreateBuilder<TouchedClock>();
            for (var i = 0; i < stories.Length; i++)
            {
                stories[i].Take(entry, PatientStory.IsValidated(entry, care.Caregivers, care.Zone));
                var state = StateOf(stories[i], care);
                touched.AddRange(Changes(stories[i].Line.Id, states[i], state));
                touched.AddRange(Companions(stories[i], entry));
                states[i] = state;
            }

            touched.AddRange(OfThePatient(entry, care));
            events.Add(new PastEvent(entry, touched.ToImmutable()));
        }

        return events.ToImmutable();
    }

    /// <summary>One clock as it stands: what it runs from, what cut it short, and whether the line has ended.</summary>
    private readonly record struct ClockState(CareItem Item, string? Lumen, Anchor Anchor, int Broken, bool Ended);

    private static List<ClockState> StateOf(LineStory story, PatientCare care)
    {
        var ended = story.Ended is not null;
        var states = new List<ClockState>();
        if (story.Line.Kind == LineKind.Port)
        {
            states.Add(new ClockState(CareItem.PortNeedle, null, story.Needle, story.BrokenSeals.Length, ended));
            states.Add(new ClockState(CareItem.PortFlush, null, story.PortFlush, 0, ended));
        }
        else
        {
            states.Add(new ClockState(CareItem.Dressing, null, story.Dressing, story.BrokenSeals.Length, ended));
            if (story.Line.ExitSiteHealed) states.Add(new ClockState(CareItem.SiteCheck, null, story.SiteCheck, 0, ended));
        }

        foreach (var lumen in story.Lumens) AddLumen(states, story.Line, lumen, ended, care);
        return states;
    }

    private static void AddLumen(List<ClockState> states, Line line, LumenStory lumen, bool ended, PatientCare care)
    {
        if (line.Kind != LineKind.Port)
        {
            states.Add(new ClockState(CareItem.Connector, lumen.Label, lumen.Connector, lumen.Compromised is null ? 0 : 1, ended));
            states.Add(new ClockState(CareItem.LumenFlush, lumen.Label, lumen.Flush, 0, ended));
        }

        if (care.Infusions.Any(infusion => infusion.Line == line.Id && infusion.Lumen == lumen.Label))
            states.Add(new ClockState(CareItem.Set, lumen.Label, lumen.Set, 0, ended));
    }

    private static IEnumerable<TouchedClock> Changes(LineId line, List<ClockState> before, List<ClockState> after)
    {
        for (var i = 0; i < after.Count; i++)
            if (ChangeOf(before[i], after[i]) is { } change)
                yield return new TouchedClock(after[i].Item, line, after[i].Lumen, null, change);
    }

    private static ClockChange? ChangeOf(ClockState before, ClockState after)
    {
        if (after.Ended && !before.Ended) return before.Anchor.By is null ? null : ClockChange.Ended;
        if (after.Anchor.By?.Id != before.Anchor.By?.Id)
            return after.Anchor.By is null ? ClockChange.Ended : before.Anchor.By is null ? ClockChange.Started : ClockChange.Reset;
        if (after.Anchor.Missing == MissingDate.HospitalStay && before.Anchor.Missing != MissingDate.HospitalStay) return ClockChange.LostItsDate;
        return after.Broken > before.Broken ? ClockChange.CutShort : null;
    }

    /// <summary>Securement and outside length keep no anchor of their own: the reset table says what an entry did to them.</summary>
    private static IEnumerable<TouchedClock> Companions(LineStory story, LineEvent entry)
    {
        if (entry.Line != story.Line.Id || story.Line.Kind == LineKind.Port) yield break;
        if (story.Ended is { } end && end.Id != entry.Id) yield break;
        if (story.Line.Securement == SecurementKind.Adhesive && ByTable(entry, CareItem.Securement, entry.SecurementChanged) is { } held)
            yield return new TouchedClock(CareItem.Securement, story.Line.Id, null, null, held);
        if (ByTable(entry, CareItem.OutsideLength, true) is { } measured)
            yield return new TouchedClock(CareItem.OutsideLength, story.Line.Id, null, null, measured);
    }

    private static ClockChange? ByTable(LineEvent entry, CareItem item, bool recorded) => ResetTable.Of(entry.Kind, item) switch
    {
        ResetEffect.Starts => ClockChange.Started,
        ResetEffect.Resets => ClockChange.Reset,
        ResetEffect.IfRecorded or ResetEffect.ResetsNamedLumens => recorded ? ClockChange.Reset : null,
        ResetEffect.Ends => ClockChange.Ended,
        ResetEffect.Nothing => null,
        _ => null,
    };

    private static IEnumerable<TouchedClock> OfThePatient(LineEvent entry, PatientCare care)
    {
        if (entry.Kind == LineEventKind.Recertified)
            yield return new TouchedClock(CareItem.Recertification, null, null, null, ClockChange.Reset);
        if (entry.Kind is not (LineEventKind.LabsDrawn or LineEventKind.DoseGiven or LineEventKind.ServiceGiven or LineEventKind.Removed)
            || entry.Performed is not { } performed) yield break;
        foreach (var order in care.Orders)
            if (entry.Order == order.Id
                || (entry.Order is null && entry.Kind == LineEventKind.LabsDrawn && order.Kind == OrderKind.Labs && order.IsActiveOn(performed.Date)))
                yield return new TouchedClock(
                    order.Kind is OrderKind.Labs or OrderKind.DrugLevel ? CareItem.Labs : CareItem.OrderedService, order.Line, null, order.Id, ClockChange.Reset);
    }
}
