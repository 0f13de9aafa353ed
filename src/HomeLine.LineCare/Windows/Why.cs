using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Windows;

/// <summary>Why a window is where it is, kept as facts. The sentence is written when somebody first reads it: most windows are only counted,
/// sorted or planned, and nobody reads their reasons.</summary>
internal abstract class Why(LineEvent? anchor)
{
    private WindowReason? _told;

    /// <summary>The ledger entry the clock runs from; empty when there is none.</summary>
    public LineEvent? Anchor => anchor;

    /// <summary>The reason in full. Two threads may write it at once; both write the same.</summary>
    public WindowReason Told => _told ??= Tell();

    /// <summary>A reason from facts and the way to tell them. The facts hold nothing but what the telling needs.</summary>
    public static Why Of<TFacts>(LineEvent? anchor, TFacts facts, Func<LineEvent?, TFacts, WindowReason> tell) => new FromFacts<TFacts>(anchor, facts, tell);

    /// <summary>Nobody has said why.</summary>
    public static readonly Why Untold = new InWords(new WindowReason(null, null, "", "", PolicyLevel.Default, "", "", []));

    /// <summary>A reason that is already in words.</summary>
    public static Why Already(WindowReason reason) => new InWords(reason);

    /// <summary>Two reasons are the same when they read the same.</summary>
    public override bool Equals(object? obj) => ReferenceEquals(this, obj) || (obj is Why other && Told.Equals(other.Told));

    public override int GetHashCode() => Told.GetHashCode();

    protected abstract WindowReason Tell();

    private sealed class FromFacts<TFacts>(LineEvent? anchor, TFacts facts, Func<LineEvent?, TFacts, WindowReason> tell) : Why(anchor)
    {
        protected override WindowReason Tell() => tell(Anchor, facts);
    }

    private sealed class InWords(WindowReason reason) : Why(null)
    {
        protected override WindowReason Tell() => reason;
    }
}
