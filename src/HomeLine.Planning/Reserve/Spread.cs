using HomeLine.Planning.Problem;

namespace HomeLine.Planning.Reserve;

/// <summary>
/// Some homes spread over all of them: first the one from which the way to everybody is shortest, then always the one that brings most people nearer to one of those chosen. The first
/// few of many are therefore the few.
/// </summary>
internal static class Spread
{
    /// <summary>Homes by index, each once; fewer when there are fewer homes.</summary>
    /// <param name="homes">Places.</param>
    /// <param name="travel">Minutes between them.</param>
    /// <param name="wanted">How many.</param>
    public static int[] Of(int[] homes, ITravelTimes travel, int wanted)
    {
        var minutes = new TravelMatrix(homes, travel.Minutes);
        var nearest = new long[homes.Length];
        Array.Fill(nearest, ITravelTimes.Unreachable);
        var chosen = new List<int>();
        while (chosen.Count < Math.Min(wanted, homes.Length))
        {
            int best = -1;
            long least = long.MaxValue;
            for (int home = 0; home < homes.Length; home++)
            {
                if (chosen.Contains(home)) continue;
                long sum = 0;
                for (int other = 0; other < homes.Length && sum < least; other++) sum += Math.Min(nearest[other], minutes.Minutes(home, other));
                if (sum < least) (best, least) = (home, sum);
            }

            chosen.Add(best);
            for (int other = 0; other < homes.Length; other++) nearest[other] = Math.Min(nearest[other], minutes.Minutes(best, other));
        }

        return [.. chosen];
    }
}
