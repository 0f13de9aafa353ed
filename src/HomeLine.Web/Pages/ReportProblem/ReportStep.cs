namespace HomeLine.Web.Pages.ReportProblem;

/// <summary>Where a call stands. From <see cref="Stopped"/> no step leads on: there is deliberately no way to a visit time.</summary>
public enum ReportStep
{
    Who,
    Screen,
    Stopped,
    Finding,
    Answers,
    Told,
}
