using System.Globalization;

namespace HomeLine.Benchmarks.Weeks;

/// <summary>Times as a row of mean and percentiles.</summary>
internal static class Percentiles
{
    public static string Row(string front, List<double> times)
    {
        double[] sorted = [.. times.Order()];
        return string.Create(CultureInfo.InvariantCulture,
            $"{front},{sorted.Average():F2},{At(sorted, 0.5):F2},{At(sorted, 0.95):F2},{At(sorted, 0.99):F2},{sorted[^1]:F2}");
    }

    private static double At(double[] sorted, double share) => sorted[Math.Min(sorted.Length - 1, (int)(share * sorted.Length))];
}
