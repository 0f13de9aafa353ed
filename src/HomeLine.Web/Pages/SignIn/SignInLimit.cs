namespace HomeLine.Web.Pages.SignIn;

/// <summary>How often one address may call the sign-in pages. Our own default; the growing lockout of the account stands beside it.</summary>
public static class SignInLimit
{
    public const string Name = "sign-in";
    public const int TriesAMinute = 30;
}
