using System.Collections.Immutable;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Tests.Naive;

/// <summary>One box of the chart: who last wrote in it, and whether a hospital stay has made it worthless since.</summary>
internal sealed class Box
{
    public LineEvent? By { get; private set; }

    public bool Lost { get; set; }

    /// <summary>A date somebody can stand for.</summary>
    public bool IsKnown => By is { Performed: not null } && By.Certainty != Certainty.Guess && !Lost;

    public CareMoment When => By!.Performed!.Value;

    public void Write(LineEvent entry) => (By, Lost) = (entry, false);

    public void Wipe() => (By, Lost) = (null, false);
}

/// <summary>One lumen's boxes.</summary>
internal sealed class LumenChart(Lumen lumen)
{
    public string Letter { get; } = lumen.Label;

    public bool Occluded { get; set; } = lumen.Occluded;

    public Box Connector { get; } = new();

    public Box Flush { get; } = new();

    public Box Set { get; } = new();

    /// <summary>The needle the set hung on has come out.</summary>
    public bool SetTakenDown { get; set; }

    public LineEvent? DoseEnded { get; set; }

    public LineEvent? Cracked { get; set; }
}

/// <summary>A chart on the wall for one line, filled in day by day as the nurses would.</summary>
internal sealed class WallChart(Line line, WallCalendar wall)
{
    private LineEvent? _admission;

    public Line Line { get; } = line;

    public ImmutableArray<LumenChart> Lumens { get; } = [.. line.Lumens.Select(lumen => new LumenChart(lumen))];

    public Box Dressing { get; } = new();

    public Box Needle { get; } = new();

    public Box PortFlush { get; } = new();

    public Box Look { get; } = new();

    public DressingKind? Cover { get; private set; }

    public bool NeedleIn { get; private set; }

    public bool TipConfirmed { get; private set; } = line.TipConfirmed;

    public LineEvent? PlacedBy { get; private set; }

    public LineEvent? LockedBy { get; private set; }

    public LineEvent? CameOut { get; private set; }

    public bool LookedAtAfterRemoval { get; private set; }

    public List<LineEvent> SealReports { get; } = [];

    public LineEvent? Unverified { get; private set; }

    public LineEvent? ToldAgainstTheDate { get; private set; }

    public LineEvent? LastLength { get; private set; }

    public LineEvent? FirstLength { get; private set; }

    /// <summary>The reading a licensed person released the line on.</summary>
    public LineEvent? AcceptedLength { get; private set; }

    public void Write(LineEvent entry, bool theirsToDo)
    {
        if (entry.Kind == LineEventKind.AdmittedToHospital) _admission ??= entry;
        if (entry.Kind == LineEventKind.ReturnedHome) ComeHome(entry);
        if (entry.Line != Line.Id) return;
        if (CameOut is not null)
        {
            if (entry.Kind == LineEventKind.SiteChecked) LookedAtAfterRemoval = true;
            return;
        }

        if (entry.Kind == LineEventKind.Inserted) PlacedBy = entry;
        WriteDressing(entry);
        WriteNeedle(entry);
        foreach (var lumen in Lumens) WriteLumen(lumen, entry);
        WriteRemarks(entry);
        if (WhatResets.Of(entry.Kind, WhatResets.Look) is 'R' or 'S'
            && (entry.Performer == PerformerKind.Nurse || entry.Kind == LineEventKind.Inserted))
        {
            Look.Write(entry);
            Unverified = null;
        }

        if (!theirsToDo) Unverified = entry;
        if (entry.Kind is LineEventKind.Removed or LineEventKind.Exchanged) CameOut = entry;
    }

    private void WriteDressing(LineEvent entry)
    {
        var letter = WhatResets.Of(entry.Kind, WhatResets.Dressing);
        if (letter == 'E')
        {
            Dressing.Wipe();
            Cover = DressingKind.None;
            SealReports.Clear();
        }

        if (letter is not ('R' or 'S')) return;
        if (ContradictsTheDateOnTheDressing(entry)) return;
        Dressing.Write(entry);
        Cover = entry.Dressing ?? (entry.Kind == LineEventKind.Inserted ? DressingKind.Gauze : Cover ?? DressingKind.Film);
        SealReports.Clear();
    }

    /// <summary>A date read off the dressing is about the dressing that is on. Paper or a call that tells of another change, before
    /// the date was read, is weaker and cannot be true; told after it, somebody has to decide.</summary>
    private bool ContradictsTheDateOnTheDressing(LineEvent told)
    {
        if (!Dressing.IsKnown || Dressing.By!.Certainty != Certainty.WrittenOnDressing) return false;
        if (told.Certainty is not (Certainty.CaregiverByPhone or Certainty.DischargePaper)) return false;
        if (told.Performed is not { } claim || claim.Date == Dressing.When.Date) return false;
        var read = Dressing.By.RecordedAt;
        var claimedBeforeReading = claim.At is { } at ? at <= read : claim.Date < wall.DayAt(read);
        if (!claimedBeforeReading) return false;
        if (told.RecordedAt > read) ToldAgainstTheDate = told;
        return true;
    }

    private void WriteNeedle(LineEvent entry)
    {
        switch (WhatResets.Of(entry.Kind, WhatResets.Needle))
        {
            case 'R': Needle.Write(entry); NeedleIn = true; break;
            case 'E': Needle.Wipe(); NeedleIn = false; break;
        }

        var flush = WhatResets.Of(entry.Kind, WhatResets.PortFlush);
        if (flush is 'R' or 'S' || (flush == '?' && entry.LumensUsed.Length > 0)) PortFlush.Write(entry);
    }

    private void WriteLumen(LumenChart lumen, LineEvent entry)
    {
        var used = Means(lumen, entry.LumensUsed);
        if (Touches(lumen, entry, WhatResets.Connector, entry.ConnectorsChanged)
            || (entry.Kind == LineEventKind.BloodCultureDrawn && entry.LumensUsed.Contains(lumen.Letter)))
        {
            lumen.Connector.Write(entry);
            lumen.Cracked = null;
        }

        if (Touches(lumen, entry, WhatResets.Flush, entry.LumensUsed)) lumen.Flush.Write(entry);
        if (Touches(lumen, entry, WhatResets.Set, entry.LumensUsed) || (entry.Kind == LineEventKind.SetChanged && entry.LumensUsed.Length == 0))
        {
            lumen.Set.Write(entry);
            lumen.SetTakenDown = false;
        }

        if (WhatResets.Of(entry.Kind, WhatResets.Set) == 'E') lumen.SetTakenDown = true;
        if (entry.Kind == LineEventKind.DoseGiven && used) lumen.DoseEnded = entry;
    }

    /// <summary>Named, or none named and there is only the one.</summary>
    private bool Means(LumenChart lumen, ImmutableArray<string> letters) =>
        letters.Contains(lumen.Letter) || (letters.Length == 0 && Lumens.Length == 1);

    private bool Touches(LumenChart lumen, LineEvent entry, int column, ImmutableArray<string> letters) =>
        WhatResets.Of(entry.Kind, column) switch
        {
            'R' or 'S' => true,
            'L' => Means(lumen, letters),
            '?' => letters.Contains(lumen.Letter),
            _ => false,
        };

    private void WriteRemarks(LineEvent entry)
    {
        var letters = entry.LumensUsed;
        switch (entry.Kind)
        {
            case LineEventKind.TipConfirmed: TipConfirmed = true; break;
            case LineEventKind.UseLocked: LockedBy = entry; break;
            case LineEventKind.UseReleased: LockedBy = null; break;
            case LineEventKind.SealReported: SealReports.Add(entry); break;
            case LineEventKind.LumenOccluded or LineEventKind.LumenCleared:
                foreach (var lumen in Lumens)
                    if (letters.Length == 0 || letters.Contains(lumen.Letter)) lumen.Occluded = entry.Kind == LineEventKind.LumenOccluded;
                break;
            case LineEventKind.ConnectorCompromised:
                if (entry.ConnectorsChanged.Length > 0) letters = entry.ConnectorsChanged;
                foreach (var lumen in Lumens)
                    if (letters.Length == 0 || letters.Contains(lumen.Letter)) lumen.Cracked = entry;
                break;
        }

        if (entry.Kind is LineEventKind.Removed or LineEventKind.Exchanged) return;
        if (entry.OutsideLengthCm is not null)
        {
            if (entry.Kind == LineEventKind.Inserted) FirstLength = entry;
            LastLength = entry;
        }

        if (entry.Kind == LineEventKind.UseReleased) AcceptedLength = LastLength;
    }

    /// <summary>Whatever was dated before the stay no longer says what is on the line, unless somebody has read it off since.</summary>
    private void ComeHome(LineEvent home)
    {
        var stayBegan = When(_admission ?? home);
        var cameHome = home.Performed is { At: null } someTime ? wall.Morning(someTime.Date) : When(home);
        foreach (var box in Boxes())
        {
            if (box.By is not { } by || When(by) > stayBegan) continue;
            var readOffSince = by.RecordedAt >= cameHome && by.Certainty is Certainty.WrittenOnDressing or Certainty.DischargePaper;
            if (!readOffSince) box.Lost = true;
        }

        _admission = null;
    }

    private IEnumerable<Box> Boxes() =>
        Lumens.SelectMany(lumen => new[] { lumen.Connector, lumen.Flush, lumen.Set }).Concat([Dressing, Needle, PortFlush, Look]);

    /// <summary>Beside a stay, a day without a time counts as its noon.</summary>
    private Instant When(LineEvent entry) => entry.Performed switch
    {
        null => entry.RecordedAt,
        { At: { } at } => at,
        { } day => wall.Noon(day.Date),
    };
}
