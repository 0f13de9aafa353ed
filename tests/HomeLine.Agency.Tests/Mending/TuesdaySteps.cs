using HomeLine.Agency.Reports;
using HomeLine.Agency.Tests.Storage;
using HomeLine.LineCare.Ledger;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Tests.Mending;

/// <summary>Steps of the Tuesday that later ones build on.</summary>
internal static class TuesdaySteps
{
    /// <summary>07:52: the dressing of P03 lifts, and the nurse of answer A is promised for 10:08.</summary>
    public static async Task PromiseP03Async(this TestAgency agency)
    {
        var reporting = agency.Ask<ReportProblem>();
        ReportResult result = (await reporting.ReportAsync(TestAgency.Coordinator, new ProblemReport
        {
            Patient = new PatientId("P03"),
            Line = new LineId("P03-1"),
            Caller = "spouse",
            SeenAt = DemoAgency.At(9, 7, 52),
            Answers = Tuesday.AllNoBut(),
            Finding = SealFinding.EdgeLifted | SealFinding.Moisture,
        }, TestContext.Current.CancellationToken)).Value;
        Assert.True((await reporting.ApplyAsync(TestAgency.Coordinator, result.ReportId, "A", "", TestContext.Current.CancellationToken)).Succeeded);
    }
}
