using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Clocks;

/// <summary>An implanted port: while the needle is in, needle, dressing, extension and connector are one event; while it is out, only the idle flush runs.</summary>
internal static class PortClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind != LineKind.Port) return;
        if (story.Accessed)
            reckoning.Windows.Add(SealClock.CutShort(reckoning, story, new WindowDraft(
                CareItem.PortNeedle, story.Line.Id, null, story.Needle, ClockRule.PortNeedle,
                story.Needle.IsDated ? "Port accessed" : "Port needle").Window(reckoning)));
        else
            reckoning.Windows.Add(new WindowDraft(
                CareItem.PortFlush, story.Line.Id, null, story.PortFlush, ClockRule.PortFlush,
                story.PortFlush.IsDated ? "Idle port last used" : "Idle port flush").Window(reckoning));
    }
}
