using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace HomeLine.Agency.Access;

/// <summary>A random secret that is handed over once, in an address. Only its hash is ever kept.</summary>
internal static class OneTimeSecret
{
    /// <summary>128 random bits: more than anybody can try.</summary>
    private const int Bytes = 16;

    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    public static string HashOf(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));

    /// <summary>Takes the same time wherever the two differ.</summary>
    public static bool Same(string secret, string other) => CryptographicOperations.FixedTimeEquals(
        SHA256.HashData(Encoding.UTF8.GetBytes(secret)), SHA256.HashData(Encoding.UTF8.GetBytes(other)));
}
