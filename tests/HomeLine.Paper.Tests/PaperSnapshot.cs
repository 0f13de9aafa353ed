using Snapshooter.Xunit3;

namespace HomeLine.Paper.Tests;

/// <summary>
/// Compares text with the approved text beside the test. The only user of the snapshot package, so that another can take its place.
/// With SNAPSHOOTER_STRICT_MODE=on a missing approved text fails instead of being written.
/// </summary>
internal static class PaperSnapshot
{
    public static void Matches(string text) => Snapshot.Match(text);
}
