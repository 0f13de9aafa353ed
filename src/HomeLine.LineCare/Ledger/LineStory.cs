using System.Collections.Immutable;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Ledger;

/// <summary>What the ledger says about one line, gathered in one pass over its events in the order performed.</summary>
internal sealed partial class LineStory
{
    private Instant? _admittedAt;

    private readonly DateTimeZone _zone;

    public LineStory(Line line, DateTimeZone zone)
    {
        Line = line;
        _zone = zone;
        Lumens = new LumenStory[line.Lumens.Length];
        for (var i = 0; i < Lumens.Length; i++) Lumens[i] = new LumenStory(line.Lumens[i]);
        TipConfirmed = line.TipConfirmed;
    }

    public Line Line { get; }

    public LumenStory[] Lumens { get; private set; }

    public Anchor Dressing { get; private set; } = Anchor.None;

    public Anchor Needle { get; private set; } = Anchor.None;

    public Anchor PortFlush { get; private set; } = Anchor.None;

    public Anchor SiteCheck { get; private set; } = Anchor.None;

    /// <summary>What lies over the site now; empty when no event says.</summary>
    public DressingKind? Covering { get; private set; }

    /// <summary>The needle is in the port.</summary>
    public bool Accessed { get; private set; }

    public bool TipConfirmed { get; private set; }

    /// <summary>The entry that locked the line for use, until one releases it.</summary>
    public LineEvent? UseLocked { get; private set; }

    public LineEvent? Inserted { get; private set; }

    /// <summary>The removal or exchange that ended this line.</summary>
    public LineEvent? Ended { get; private set; }

    public LineEvent? CheckedAfterRemoval { get; private set; }

    /// <summary>Reports of a broken seal since the last full change.</summary>
    public ImmutableArray<LineEvent> BrokenSeals { get; private set; } = [];

    /// <summary>Care by somebody not validated for it that no nurse has looked at since.</summary>
    public LineEvent? Unverified { get; private set; }

    /// <summary>Two statements about the same dressing that cannot both be true.</summary>
    public LineEvent? Contradicted { get; private set; }

    public LineEvent? LastLength { get; private set; }

    public LineEvent? Baseline { get; private set; }

    /// <summary>By how many centimetres the last reading is longer than the one it counts from; empty when there is nothing to compare.</summary>
    public decimal? Growth { get; private set; }

    /// <summary>The last reading there was when a licensed person released the line: that length is accepted.</summary>
    public LineEvent? AcceptedLength { get; private set; }

    /// <summary>The same story, to be told on without touching this one.</summary>
    public LineStory Copy()
    {
        var copy = (LineStory)MemberwiseClone();
        copy.Lumens = Array.ConvertAll(Lumens, static lumen => lumen.Copy());
        return copy;
    }

    public LumenStory? Lumen(string label) => Array.Find(Lumens, lumen => lumen.Label == label);

    /// <summary>The first measurement of the arm: the baseline.</summary>
    public LineEvent? FirstGirth { get; private set; }

    public LineEvent? LastGirth { get; private set; }

    /// <summary>Takes in the next event of this line, or one of the patient as a whole.</summary>
    /// <param name="entry">The event.</param>
    /// <param name="validated">Whether the performer was validated for what the event does.</param>
    public void Take(LineEvent entry, bool validated)
    {
        switch (entry.Kind)
        {
            case LineEventKind.AdmittedToHospital: _admittedAt ??= MomentOf(entry); return;
            case LineEventKind.ReturnedHome: LoseDatesBefore(_admittedAt ?? MomentOf(entry), entry); _admittedAt = null; return;
        }

        if (entry.Line != Line.Id) return;
        if (Ended is not null)
        {
            if (entry.Kind == LineEventKind.SiteChecked) CheckedAfterRemoval = entry;
            return;
        }

        TakeState(entry);
        TakeDressing(entry);
        TakeNeedle(entry);
        TakeLumens(entry);
        TakeLooks(entry, validated);
    }

    private void TakeState(LineEvent entry)
    {
        switch (entry.Kind)
        {
            case LineEventKind.Inserted: Inserted = entry; break;
            case LineEventKind.TipConfirmed: TipConfirmed = true; break;
            case LineEventKind.UseLocked: UseLocked = entry; break;
            case LineEventKind.UseReleased: UseLocked = null; break;
            case LineEventKind.SealReported: BrokenSeals = BrokenSeals.Add(entry); break;
            case LineEventKind.Removed or LineEventKind.Exchanged: Ended = entry; break;
            case LineEventKind.LumenOccluded or LineEventKind.LumenCleared:
                foreach (var lumen in Named(entry.LumensUsed))
                {
                    lumen.Occluded = entry.Kind == LineEventKind.LumenOccluded;
                    lumen.OccludedBy = lumen.Occluded ? entry : null;
                }

                break;
            case LineEventKind.ConnectorCompromised:
                foreach (var lumen in Named(entry.ConnectorsChanged.IsDefaultOrEmpty ? entry.LumensUsed : entry.ConnectorsChanged))
                    lumen.Compromised = entry;
                break;
        }

        TakeLength(entry);
        if (entry.ArmGirthCm is null) return;
        FirstGirth ??= entry;
        LastGirth = entry;
    }

    /// <summary>A release accepts the last reading there is, its own among them.</summary>
    private void TakeLength(LineEvent entry)
    {
        if (entry.OutsideLengthCm is null && entry.Kind != LineEventKind.UseReleased) return;
        if (entry.OutsideLengthCm is not null && ResetTable.Of(entry.Kind, CareItem.OutsideLength) is not ResetEffect.Ends)
        {
            if (entry.Kind == LineEventKind.Inserted) Baseline = entry;
            LastLength = entry;
        }

        if (entry.Kind == LineEventKind.UseReleased) AcceptedLength = LastLength;
        var from = AcceptedLength ?? Baseline;
        Growth = LastLength is { OutsideLengthCm: { } now } && LastLength.Id != from?.Id && (from?.OutsideLengthCm ?? Line.OutsideLengthCm) is { } before
            ? now - before
            : null;
    }

    private void TakeDressing(LineEvent entry)
    {
        switch (ResetTable.Of(entry.Kind, CareItem.Dressing))
        {
            case ResetEffect.Resets or ResetEffect.Starts:
                var (kept, asks) = Statement.Weigh(Dressing, entry, _zone);
                if (asks is not null) Contradicted = asks;
                if (!kept) break;
                Dressing = Anchor.At(entry);
                Covering = entry.Dressing ?? DefaultCovering(entry);
                BrokenSeals = [];
                break;
            case ResetEffect.Ends:
                Dressing = Anchor.None;
                Covering = DressingKind.None;
                BrokenSeals = [];
                break;
        }
    }

    /// <summary>Unknown material at insertion is treated as gauze; a change that does not say keeps what was there.</summary>
    private DressingKind DefaultCovering(LineEvent entry) =>
        entry.Kind == LineEventKind.Inserted ? DressingKind.Gauze : Covering ?? DressingKind.Film;

    private void TakeNeedle(LineEvent entry)
    {
        switch (ResetTable.Of(entry.Kind, CareItem.PortNeedle))
        {
            case ResetEffect.Resets: Needle = Anchor.At(entry); Accessed = true; break;
            case ResetEffect.Ends: Needle = Anchor.None; Accessed = false; break;
        }

        if (Resets(CareItem.PortFlush, entry, !entry.LumensUsed.IsDefaultOrEmpty)) PortFlush = Anchor.At(entry);
    }

    private void TakeLumens(LineEvent entry)
    {
        foreach (var lumen in Lumens)
        {
            if (ResetsLumen(CareItem.Connector, entry, entry.ConnectorsChanged, lumen)
                || (entry.Kind == LineEventKind.BloodCultureDrawn && Names(entry.LumensUsed, lumen)))
            {
                lumen.Connector = Anchor.At(entry);
                lumen.Compromised = null;
            }

            if (ResetsLumen(CareItem.LumenFlush, entry, entry.LumensUsed, lumen)) lumen.Flush = Anchor.At(entry);
            TakeSet(entry, lumen);
        }
    }

    private void TakeSet(LineEvent entry, LumenStory lumen)
    {
        if (ResetTable.Of(entry.Kind, CareItem.Set) == ResetEffect.Ends) lumen.SetTakenDown = true;
        if (ResetsLumen(CareItem.Set, entry, entry.LumensUsed, lumen))
        {
            lumen.Set = Anchor.At(entry);
            lumen.SetTakenDown = false;
        }

        if (entry.Kind == LineEventKind.DoseGiven && (Names(entry.LumensUsed, lumen) || (entry.LumensUsed.IsDefaultOrEmpty && Lumens.Length == 1)))
            lumen.DoseEnded = entry;
    }

    private void TakeLooks(LineEvent entry, bool validated)
    {
        var byNurse = entry.Performer == PerformerKind.Nurse;
        var looks = ResetTable.Of(entry.Kind, CareItem.SiteCheck) is ResetEffect.Resets or ResetEffect.Starts;
        if (looks && (byNurse || entry.Kind == LineEventKind.Inserted))
        {
            SiteCheck = Anchor.At(entry);
            Unverified = null;
        }

        if (!validated) Unverified = entry;
    }

    /// <summary>Care with a date before the admission no longer says what is on the line now; what was done during the stay does.</summary>
    private void LoseDatesBefore(Instant admittedAt, LineEvent returned)
    {
        var returnedAt = returned.Performed is { At: null } day ? _zone.AtStartOfDay(day.Date).ToInstant() : MomentOf(returned);
        Anchor Lose(Anchor anchor) =>
            anchor.By is null || MomentOf(anchor.By) > admittedAt ? anchor : anchor.AfterHospital(returnedAt);
        Dressing = Lose(Dressing);
        Needle = Lose(Needle);
        PortFlush = Lose(PortFlush);
        SiteCheck = Lose(SiteCheck);
        foreach (var lumen in Lumens)
        {
            lumen.Connector = Lose(lumen.Connector);
            lumen.Flush = Lose(lumen.Flush);
            lumen.Set = Lose(lumen.Set);
        }
    }
}
