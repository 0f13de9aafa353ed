using HomeLine.LineCare.Lines;
using NodaTime;

namespace HomeLine.LineCare.Recording;

/// <summary>Blood drawn under an order, as it was done.</summary>
/// <param name="Order">The order.</param>
/// <param name="Line">Through which line; empty when a vein was punctured.</param>
/// <param name="Lumen">Through which lumen; empty when a vein was punctured.</param>
/// <param name="DrawnAt">When.</param>
/// <param name="LastDose">When the last dose before it was given, for a drug level.</param>
/// <param name="DroppedAt">When it was handed in; empty while it is not.</param>
public sealed record Draw(string Order, LineId? Line, string? Lumen, Instant? DrawnAt, Instant? LastDose = null, Instant? DroppedAt = null);
