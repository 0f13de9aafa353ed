namespace HomeLine.LineCare.Windows;

/// <summary>
/// How far the next occurrence of an item lies from this one, once this one is done. For planning ahead; the true window is
/// computed from the ledger when the care has been recorded.
/// </summary>
/// <param name="MinGap">Least gap, inclusive, in civil days or elapsed hours by <paramref name="Basis"/>. A floor in hours on an item that
/// ends by the day is rounded up to days that can never undercut it (96 hours become 5 days: day +4 may be 80 hours).</param>
/// <param name="MaxGap">Largest gap that is not late, inclusive, in the same unit.</param>
/// <param name="Basis">Days or hours.</param>
public sealed record Repeat(int MinGap, int MaxGap, ClockBasis Basis);
