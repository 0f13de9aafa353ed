namespace HomeLine.Web.Pages.FirstRun;

/// <summary>What is typed to make the first administrator.</summary>
public sealed record FirstRunForm
{
    public string Code { get; set; } = "";
    public string Name { get; set; } = "";
    public string UserName { get; set; } = "";
    public string Password { get; set; } = "";
}
