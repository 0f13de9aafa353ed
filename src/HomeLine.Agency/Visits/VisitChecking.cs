using System.Collections.Immutable;
using System.Globalization;
using HomeLine.Agency.WeekPlanning;
using HomeLine.LineCare;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Recording;
using HomeLine.LineCare.RedFlags;
using HomeLine.LineCare.Scope;
using NodaTime;

namespace HomeLine.Agency.Visits;

/// <summary>Everything that is looked at before a visit may be signed. Pure: asked before signing and again while signing, with the same answer.</summary>
internal sealed class VisitChecking(VisitEntry entry, VisitSetting setting, string record)
{
    private readonly List<VisitQuestion> questions = [];
    private readonly List<string> told = [];
    private readonly List<string> flags = [];
    private readonly List<VisitFault> faults = [];

    public static VisitCheck Of(VisitEntry entry, VisitSetting setting, string record) => new VisitChecking(entry, setting, record).Check();

    private VisitCheck Check()
    {
        PatientCare care = setting.Care;
        Instant now = setting.Agency.Now;
        VisitTimes? times = VisitTimes.Of(entry, care.Zone);
        ImmutableArray<LineId> linesIn = setting.LinesIn();
        faults.AddRange(VisitFaults.Of(entry, care, times, linesIn, now));
        if (times is null || faults.Any(f => f.Code == VisitCodes.InTheFuture)) return new VisitCheck { Faults = [.. faults], Changed = [] };

        ImmutableArray<LineEvent> events = Events(care, times);
        ImmutableArray<RecordingReply> replies = BeforeRecording.Replies(care, events, setting.Agency.Files.Policy, now);
        foreach (RecordingReply reply in replies) Take(reply, FieldOf(reply, events), KindOf(reply, events));
        Lengths();
        Draws(care, times, now);
        if (AllergyNote.Ask(entry.AllergyTold, care.Risks) is { } allergy) Take(allergy, "allergy", "");
        OtherLines(linesIn);
        bool beyond = Scope(care);
        Gates(care, times);
        Twice();
        Clocks(times, now);
        Words();
        ScreenContext context = ScreenContext.Of(care, setting.Agency.Files.Policy, setting.Agency.Today);
        ScreenOutcome? screen = VisitStops.Screen(entry, context);
        return new VisitCheck
        {
            Faults = [.. faults],
            Questions = [.. questions.DistinctBy(q => q.Key)],
            Told = [.. told.Distinct()],
            Stop = VisitStops.Of(entry, screen, context, replies, setting.Patient, setting.Agency.Roster.Profile),
            Moved = MovedWords.Of(WhatWouldMove.If(care, events, setting.Agency.Files.Policy, now), care, now),
            Changed = VisitDifferences.Of(entry, care, times.Arrived - Duration.Epsilon),
            Flags = [.. flags],
            NeedsCoSign = NeedsCoSign(beyond),
            Events = WithAnswers(events, replies),
        };
    }

    private ImmutableArray<LineEvent> Events(PatientCare care, VisitTimes times)
    {
        ImmutableArray<LineEvent> events = VisitEvents.Of(entry, care, times, record, setting.Nurse?.Name ?? setting.Name, setting.Name, setting.Agency.Now);
        if (setting.Amended is not { } amended) return events;
        ImmutableArray<LineEvent> before = [.. amended.Events.Select(id => care.Events.FirstOrDefault(e => e.Id == id)).OfType<LineEvent>()];
        return Amendment.Of(before, events, entry.AmendedBecause, record, setting.Agency.Now).Added;
    }

    private void Take(RecordingReply reply, string field, string kind)
    {
        string where = reply.Line is { } line ? $"{line}{(reply.Lumen is { } lumen ? $" lumen {lumen}" : "")}: " : "";
        string sentence = $"{where}{reply.Sentence}";
        switch (reply.Weight)
        {
            case ReplyWeight.Refuse: faults.Add(new VisitFault(field, reply.Code, sentence)); break;
            case ReplyWeight.Ask: Ask(reply.Code, $"{reply.Line}|{reply.Lumen}|{kind}", sentence); break;
            case ReplyWeight.Tell: told.Add(sentence); break;
        }
    }

    private void Ask(string code, string about, string sentence) => questions.Add(new VisitQuestion($"{code}|{about}", code, sentence));

    private static string FieldOf(RecordingReply reply, ImmutableArray<LineEvent> events) =>
        reply.Line is { } line ? $"line {line}" : events.FirstOrDefault(e => e.Id == reply.About)?.Line is { } other ? $"line {other}" : "arrived";

    private static string KindOf(RecordingReply reply, ImmutableArray<LineEvent> events) =>
        events.FirstOrDefault(e => e.Id == reply.About)?.Kind.ToString() ?? "";

    private void Lengths()
    {
        foreach (LineEntry line in entry.Lines)
            if (line is { OutsideLength: { } length, InInches: true } && line.Measured(length).Confirm is { } confirm)
                Take(confirm with { Line = line.Line }, $"line {line.Line}", "");
        foreach (LineEntry line in entry.Lines)
            foreach (LumenEntry lumen in line.Lumens.Where(l => l.Return == BloodReturn.None))
                told.Add($"{line.Line} lumen {lumen.Label}: no blood return. Do not force it; call before this lumen is used, as your policy says.");
    }

    private void Draws(PatientCare care, VisitTimes times, Instant now)
    {
        foreach (DrawEntry draw in entry.Draws.Where(d => entry.Items.Any(i => i.IsDone && i.Order == d.Order)))
        {
            var drawn = new Draw(
                draw.Order, draw.Line, draw.Lumen, draw.DrawnAt is { } at ? times.At(at) : null,
                draw.LastDose?.InZoneLeniently(care.Zone).ToInstant(), draw.DroppedAt is { } dropped ? times.At(dropped) : null);
            foreach (RecordingReply reply in BeforeDrawing.Replies(care, drawn, setting.Agency.Files.Policy, now)) Take(reply, $"draw {draw.Order}", draw.Order);
        }
    }

    private void OtherLines(ImmutableArray<LineId> linesIn)
    {
        if (!entry.Items.Any(i => i.IsDone)) return;
        foreach (LineId line in linesIn.Where(l => entry.Lines.FirstOrDefault(e => e.Line == l) is not { Looked: true } && faults.All(f => f.Field != $"line {l}")))
            Ask(VisitCodes.OtherLineUnseen, $"{line}||", $"{line} is in and nobody looked at it: why not?");
    }

    private bool Scope(PatientCare care)
    {
        var reasons = VisitScope.WhyNot(setting.Nurse, entry.Items.Where(i => i.IsDone), setting.Patient, care, setting.Agency.Files.Policy, setting.Agency.Roster.Profile.CompactStates, entry.Day);
        foreach (var reason in reasons.DistinctBy(r => (r.Reason.Code, r.Reason.Sentence)))
            Ask(reason.Reason.Code, $"||{reason.Item.Item}", $"{reason.Item.Label}: {reason.Reason.Sentence} It was done all the same: why, and who licensed was asked?");
        if (!reasons.IsEmpty) flags.Add("Care beyond the nurse's scope, licence or sign-off was recorded; a licensed person looks.");
        return !reasons.IsEmpty;
    }

    private void Gates(PatientCare care, VisitTimes times)
    {
        foreach (ItemEntry item in entry.Items.Where(i => i.IsDone && i.DoneBy.Length > 0))
            if (CaregiverGate.WhyNot(care, item.DoneBy, item.Item, item.Line, entry.Day) is { } reason)
                told.Add($"{item.Label}: {reason.Sentence} It is kept as a fact, and a nurse looks.");
        foreach (TeachBack taught in entry.Teaching.Where(t => t.Level is TeachLevel.WithPrompts or TeachLevel.NotYet && t.Person.Length > 0))
            if (CaregiverGate.WhyNot(care, taught.Person, taught.Item, taught.Line, entry.Day) is null)
                told.Add($"{taught.Person} is validated for {CareLabels.Of(taught.Item)} and did not do it alone today: stop the validation on the patient's page if the task must go back to the nurse.");
        foreach (ItemEntry item in entry.Items.Where(i => i.IsDone && VisitScope.IsFirstDose(i, care)))
        {
            FirstDoseEntry known = entry.FirstDose ?? new FirstDoseEntry(false, null, false, null);
            var dose = new FirstDose(
                times.Arrived.InZone(care.Zone), (times.Left ?? times.Arrived) - times.Arrived, Duration.FromMinutes(known.InfusedMinutes ?? 0),
                known.AllergyHistoryTaken, known.KitGoodThrough, known.DrugInHome ? times.Arrived : null, []);
            foreach (ScopeReason reason in FirstDoseGate.WhyNot(dose, setting.Agency.Files.Policy))
                Ask(reason.Code, $"||{item.Order}", $"First dose: {reason.Sentence} It was given all the same: why, and who licensed was asked?");
        }
    }

    /// <summary>Two people wrote down the same care: both are kept, the latest performed is what the clocks run from.</summary>
    private void Twice()
    {
        foreach (VisitRecord other in setting.Earlier.Where(r => r.Day == entry.Day || (r.Visit is not null && r.Visit == entry.Visit)))
        {
            string[] same = [.. entry.Items.Where(i => i.IsDone && other.Entry.Items.Any(o => o.IsDone && o.Item == i.Item && o.Line == i.Line && o.Order == i.Order)).Select(i => i.Label)];
            if (same.Length == 0) continue;
            string sentence = $"{other.SignedName} recorded {string.Join(", ", same)} on {Moment(other.ArrivedAt)} as well (visit {other.Id}). Both are kept; the latest performed counts.";
            told.Add(sentence);
            flags.Add(sentence);
        }
    }

    private void Clocks(VisitTimes times, Instant now)
    {
        if (entry.DeviceNow is { } device && Math.Abs((device - setting.RealNow).TotalMinutes) is var apart && apart > (double)setting.Policy("visit.clock.apart"))
            Ask(VisitCodes.DeviceClock, "||", $"This device's clock is {apart:0} minutes apart from the office's. Are the times written down right?");
        double hours = (now - (times.Left ?? times.Arrived)).TotalHours;
        if (hours > (double)setting.Policy("visit.record.late"))
            flags.Add(string.Create(CultureInfo.InvariantCulture, $"Late entry: written down {hours:0} hours after the visit."));
    }

    private void Words()
    {
        string written = string.Join(' ', entry.Items.Select(i => i.WhyText).Concat(entry.Lines.Select(l => l.FoundText)).Append(entry.Note).Append(entry.IncidentText).Append(entry.UnplannedBecause));
        var yes = VisitStops.Flags(entry).ToHashSet(StringComparer.Ordinal);
        string[] asks = [.. WordsThatAsk.In(written).Where(q => !yes.Contains(q.Id)).Select(q => q.Text)];
        if (asks.Length > 0)
            Ask(VisitCodes.WordsThatAsk, "||", $"Words in the note may mean something else. Was this asked, and what was the answer? {string.Join(" ", asks)}");
    }

    private bool NeedsCoSign(bool beyond) =>
        beyond || (setting.Nurse?.Credential is "LPN" or "LVN" && setting.Policy("visit.cosign.practicalnurse") == 1);

    /// <summary>An answer becomes part of the ledger entry it was asked about, so that the reason stands where the clocks' readers look.</summary>
    private ImmutableArray<LineEvent> WithAnswers(ImmutableArray<LineEvent> events, ImmutableArray<RecordingReply> replies) =>
    [
        .. events.Select(one =>
        {
            string[] answers =
            [
                .. replies.Where(r => r.Weight == ReplyWeight.Ask && r.About == one.Id)
                    .Select(r => entry.Answers.GetValueOrDefault($"{r.Code}|{r.Line}|{r.Lumen}|{one.Kind}", "").Trim())
                    .Where(a => a.Length > 0).Distinct(),
            ];
            return answers.Length == 0 ? one : one with { Note = $"{one.Note} {string.Join(" ", answers)}".Trim() };
        }),
    ];

    private string Moment(Instant at) => at.InZone(setting.Patient.Zone).LocalDateTime.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture);
}
