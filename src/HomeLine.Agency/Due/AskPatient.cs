using System.Collections.Immutable;
using HomeLine.Agency.Access;
using HomeLine.LineCare.Lines;

namespace HomeLine.Agency.Due;

/// <summary>One patient with lines, ledger and the windows ahead; and the way to find one in a few keystrokes.</summary>
public sealed class AskPatient
{
    /// <summary>Needs <see cref="AgencyAction.SeePatient"/>. An unknown patient is refused with <c>patient-unknown</c>.</summary>
    public Task<Outcome<PatientOverview>> AskAsync(Actor actor, PatientId patient, CancellationToken cancel) =>
        throw new NotImplementedException();

    /// <summary>Patients whose name or identifier holds the text, at most 20, best first.</summary>
    public Task<Outcome<ImmutableArray<FoundPatient>>> FindAsync(Actor actor, string text, CancellationToken cancel) =>
        throw new NotImplementedException();
}

/// <summary>A patient found by name or identifier.</summary>
public sealed record FoundPatient(PatientId Id, string Name, string Place);
