using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace HomeLine.Architecture.Tests;

/// <summary>
/// No brand of dressing, swab or device is named anywhere. The list holds the first 16 digits of each name's SHA-256,
/// so that the list itself names none. To add one: the name in lower case, hashed.
/// </summary>
public partial class BrandTests
{
    private static readonly HashSet<string> Brands =
    [
        "06fc012cd26f6a39", "15d4070f0485d49f", "2dcf8d11b5e45b5d", "3283b59da9b838f3", "5b7d325f75ce5269",
        "6b2efa62c8fa7adb", "82ce7278fd33e0cb", "8c2d8d6034bbf8b7", "9ec71a14779f3c7b", "a10230d327d095a5",
        "aa1da17d01090fbe", "caa2977a975dd8c0", "cbf3c01eee670901", "df4c99da9ee5bda1", "e25cbcdc84bc58e0",
        "e7c14e8691af7c6c",
    ];

    [Fact]
    public void No_brand_is_named() => Expect.Nothing(
        from path in Repository.TextFiles
        from word in Words(path + " " + Repository.Read(path)).Distinct()
        where Brands.Contains(Digits(word))
        select $"{path}: {word}");

    private static IEnumerable<string> Words(string text) => Word().Matches(text).Select(word => word.Value.ToLowerInvariant());

    private static string Digits(string word) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(word)))[..16];

    [GeneratedRegex("[A-Za-z]{4,}")]
    private static partial Regex Word();
}
