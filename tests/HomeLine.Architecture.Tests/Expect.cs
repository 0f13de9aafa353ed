namespace HomeLine.Architecture.Tests;

/// <summary>An assertion that names everything it found, not only the first few.</summary>
internal static class Expect
{
    public static void Nothing(IEnumerable<string> findings)
    {
        string[] all = [.. findings];
        if (all.Length > 0)
            Assert.Fail($"{all.Length} found:\n{string.Join('\n', all)}");
    }
}
