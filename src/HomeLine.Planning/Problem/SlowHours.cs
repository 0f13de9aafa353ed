namespace HomeLine.Planning.Problem;

/// <summary>A time during which everybody drives slower than <see cref="WeekProblem.Travel"/> says, for example the hours when people go to work.</summary>
/// <param name="From">First plan minute driven slower.</param>
/// <param name="To">Plan minute from which the usual speed holds again.</param>
/// <param name="SpeedPercent">Speed then, 1 to 100 of a hundred of the usual one; parking counts as driving.</param>
public sealed record SlowHours(int From, int To, int SpeedPercent);
