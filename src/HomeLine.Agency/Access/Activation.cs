using NodaTime;

namespace HomeLine.Agency.Access;

/// <summary>A link handed to one person to set a password, once. Only a hash of its secret is kept.</summary>
public sealed class Activation
{
    public required string SecretHash { get; init; }
    public required string AccountId { get; init; }
    public required Instant ExpiresAt { get; init; }
    public Instant? UsedAt { get; set; }
}
