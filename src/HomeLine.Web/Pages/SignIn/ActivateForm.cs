namespace HomeLine.Web.Pages.SignIn;

/// <summary>What is sent to set a password through a link.</summary>
public sealed record ActivateForm
{
    public string Link { get; set; } = "";
    public string Password { get; set; } = "";
}
