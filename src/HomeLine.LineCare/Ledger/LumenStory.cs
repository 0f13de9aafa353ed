using HomeLine.LineCare.Lines;

namespace HomeLine.LineCare.Ledger;

/// <summary>What the ledger says about one lumen.</summary>
internal sealed class LumenStory(Lumen lumen)
{
    public LumenStory Copy() => (LumenStory)MemberwiseClone();

    public string Label { get; } = lumen.Label;

    public bool Occluded { get; set; } = lumen.Occluded;

    /// <summary>The entry that found it occluded; empty when the line's record says so.</summary>
    public LineEvent? OccludedBy { get; set; }

    public Anchor Connector { get; set; } = Anchor.None;

    public Anchor Flush { get; set; } = Anchor.None;

    public Anchor Set { get; set; } = Anchor.None;

    /// <summary>The needle the set hung on came out and none has gone in since: nothing hangs.</summary>
    public bool SetTakenDown { get; set; }

    /// <summary>The last dose that ended here: a container that was taken down has no set clock any more.</summary>
    public LineEvent? DoseEnded { get; set; }

    /// <summary>A connector found cracked, off or with blood in it and not changed since.</summary>
    public LineEvent? Compromised { get; set; }
}
