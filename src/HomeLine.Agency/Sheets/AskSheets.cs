using HomeLine.Agency.Access;
using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.Agency.Sheets;

/// <summary>The contents of the printed sheets.</summary>
public sealed class AskSheets
{
    /// <summary>The care sheet of a patient; counts as a new sheet that replaces the last. Needs <see cref="AgencyAction.PrintCareSheet"/>.</summary>
    public Task<Outcome<CareSheetContent>> CareSheetAsync(Actor actor, PatientId patient, CancellationToken cancel) =>
        throw new NotImplementedException();

    /// <summary>A nurse's day from the published week. Needs <see cref="AgencyAction.PrintDaySheet"/>.</summary>
    public Task<Outcome<DaySheetContent>> DaySheetAsync(Actor actor, string nurseId, LocalDate day, CancellationToken cancel) =>
        throw new NotImplementedException();
}
