namespace HomeLine.Web.Pages.SignIn;

/// <summary>What is typed to sign in.</summary>
public sealed record SignInForm
{
    public string UserName { get; set; } = "";
    public string Password { get; set; } = "";
}
