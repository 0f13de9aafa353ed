using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;
using HomeLine.LineCare.Policy;

namespace HomeLine.LineCare.Clocks;

/// <summary>Flush of each lumen that nothing runs through. Any use of that lumen, and of no other, starts it again.</summary>
internal static class LumenFlushClock
{
    public static void Add(Reckoning reckoning, LineStory story)
    {
        if (story.Line.Kind == LineKind.Port && !story.Accessed) return;
        foreach (var lumen in story.Lumens)
        {
            if (lumen.Occluded || InUse(reckoning, story.Line, lumen.Label)) continue;
            reckoning.Windows.Add(new WindowDraft(
                CareItem.LumenFlush, story.Line.Id, lumen.Label, lumen.Flush, ClockRule.LumenFlush,
                lumen.Flush.IsDated ? "Lumen {0} last used" : "Flush of idle lumen {0}")
            { About = lumen.Label }.Window(reckoning));
        }
    }

    private static bool InUse(Reckoning reckoning, Line line, string lumen)
    {
        foreach (var infusion in reckoning.Care.Infusions)
            if (infusion.Line == line.Id && infusion.Lumen == lumen) return true;
        return false;
    }
}
