using HomeLine.Agency.Roster;
using NodaTime;

namespace HomeLine.Agency.Mending;

/// <summary>A place in a nurse's day that is kept free for a referral.</summary>
/// <param name="Nurse">Who would come.</param>
/// <param name="Second">The second person, where two come.</param>
/// <param name="Day">The day.</param>
/// <param name="Start">When, branch time.</param>
/// <param name="Minutes">Minutes in the home.</param>
/// <param name="Home">Where the home is.</param>
/// <param name="Until">When it lapses by itself: so long before the start as nothing is moved any more.</param>
public sealed record HeldPlace(string Nurse, string? Second, LocalDate Day, LocalTime Start, int Minutes, MapPoint Home, Instant Until);

/// <summary>A held place that was let go.</summary>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
/// <param name="Why">Why, for example <c>went to another agency</c>.</param>
public sealed record PlaceReleased(Instant At, string By, string Why);

/// <summary>A held place with the referral it is for.</summary>
/// <param name="Trouble">The number it was asked under.</param>
/// <param name="Name">Who was referred.</param>
/// <param name="Place">The place.</param>
public sealed record KeptPlace(string Trouble, string Name, HeldPlace Place);
