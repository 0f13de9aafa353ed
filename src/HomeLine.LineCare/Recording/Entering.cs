using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;
using HomeLine.LineCare.Windows;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>One entry about to be recorded, with what is known around it and the replies gathered so far.</summary>
internal sealed class Entering
{
    private LineStory? _before;

    public Entering(LineEvent entry, PatientCare care, ImmutableArray<LineEvent> together, PolicyBook policy, Instant now)
    {
        (Entry, Care, Together, Policy, Now) = (entry, care, together, policy, now);
        Line = care.Lines.FirstOrDefault(line => line.Id == entry.Line);
        Today = now.InZone(care.Zone).Date;
        Day = entry.Performed?.Date ?? Today;
    }

    public LineEvent Entry { get; }

    public PatientCare Care { get; }

    /// <summary>Everything saved in the same breath, this entry among it.</summary>
    public ImmutableArray<LineEvent> Together { get; }

    public PolicyBook Policy { get; }

    public Instant Now { get; }

    public LocalDate Today { get; }

    /// <summary>Civil day of the care; today when it has no date.</summary>
    public LocalDate Day { get; }

    public Line? Line { get; }

    public List<RecordingReply> Replies { get; } = [];

    /// <summary>The moment of the care as far as it is known.</summary>
    public Instant At => Entry.Performed switch
    {
        { At: { } at } => at,
        { } day => Care.Zone.AtStartOfDay(day.Date).ToInstant(),
        _ => Now,
    };

    /// <summary>The line as the ledger tells it just before this entry; entries saved together with it count when they were performed earlier.</summary>
    public LineStory Before => _before ??= Replay();

    /// <summary>The window the care was done in, as it stood just before; empty without a time or a window.</summary>
    public DueWindow? WindowBefore(CareItem item, string? lumen = null) =>
        Entry.Performed is { At: { } at }
            ? WhatIsDue.For(Care with { Events = Known() }, Policy, at - Duration.Epsilon).Windows
                .FirstOrDefault(window => window.Item == item && window.Line == Entry.Line && window.Lumen == lumen)
            : null;

    public decimal Value(string ruleId) => Policy.ValueOf(ruleId, Today);

    public bool HasOrder(Func<Orders.CareOrder, bool> wanted) =>
        Care.Orders.Any(order => order.IsActiveOn(Day) && (order.Line is null || order.Line == Entry.Line) && wanted(order));

    public void Refuse(string code, string sentence, string? lumen = null) => Add(code, ReplyWeight.Refuse, sentence, lumen);

    public void Ask(string code, string sentence, string? lumen = null) => Add(code, ReplyWeight.Ask, sentence, lumen);

    public void Tell(string code, string sentence, string? lumen = null) => Add(code, ReplyWeight.Tell, sentence, lumen);

    private void Add(string code, ReplyWeight weight, string sentence, string? lumen) =>
        Replies.Add(new RecordingReply(code, weight, Entry.Line, lumen, Entry.Id, sentence));

    private LineStory Replay()
    {
        var story = new LineStory(Line!, Care.Zone);
        foreach (var entry in OrderedLedger.Read(Known(), Care.Zone, At))
            if (entry.Id != Entry.Id && !Follows(entry)) story.Take(entry, PatientStory.IsValidated(entry, Care.Caregivers, Care.Zone));
        return story;
    }

    /// <summary>Everything but this entry and the one it voids.</summary>
    private ImmutableArray<LineEvent> Known() =>
        [.. Care.Events.Where(other => other.Id != Entry.Voids), .. Together.Where(other => other.Id != Entry.Id)];

    /// <summary>Of entries on the same day without times the one recorded earlier comes first.</summary>
    private bool Follows(LineEvent other) =>
        Entry.Performed is { At: null } day && other.Performed?.Date == day.Date && other.RecordedAt >= Entry.RecordedAt && other.Performed is { At: null };
}
