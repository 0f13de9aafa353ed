namespace HomeLine.Planning.Search;

/// <summary>Restricts where a unit may go, for moves that mean to try something particular.</summary>
/// <param name="OnlyNurse">Only this nurse, or -1.</param>
/// <param name="OnlyDay">Only this table day, or -1.</param>
/// <param name="NotDay">Not this table day, or -1.</param>
/// <param name="NotNurse">Not this nurse, or -1.</param>
/// <param name="JoinOnly">Only into a visit that stands.</param>
internal readonly record struct PlaceFilter(int OnlyNurse, int OnlyDay, int NotDay, int NotNurse = -1, bool JoinOnly = false)
{
    public static PlaceFilter Any { get; } = new(-1, -1, -1);

    public bool AllowsDay(int day) => day != NotDay && (OnlyDay < 0 || day == OnlyDay);

    public bool AllowsNurse(int nurse) => nurse != NotNurse && (OnlyNurse < 0 || nurse == OnlyNurse);
}
