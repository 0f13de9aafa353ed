using NodaTime;

namespace HomeLine.LineCare.Scope;

/// <summary>What somebody found out before the first dose of a drug at home.</summary>
/// <param name="AllergyHistoryTaken">The allergy history is recorded, none known among the answers.</param>
/// <param name="KitGoodThrough">Last good day of the reaction kit in the home, included; empty when there is none.</param>
/// <param name="InfusingMinutes">How long the drug runs, minutes.</param>
public sealed record FirstDoseFacts(bool AllergyHistoryTaken, LocalDate? KitGoodThrough, int InfusingMinutes);
