namespace HomeLine.Web.Pages.SignIn;

/// <summary>An address to go back to, when it is one of this site; the due list otherwise.</summary>
public static class OwnAddress
{
    private const string Home = "/due";

    public static string Of(string? back) =>
        back is ['/', ..] && !back.StartsWith("//", StringComparison.Ordinal) && !back.StartsWith("/\\", StringComparison.Ordinal)
            && !back.Any(char.IsControl) && !back.Contains('\\', StringComparison.Ordinal)
            ? back
            : Home;
}
