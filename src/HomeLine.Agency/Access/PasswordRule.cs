using System.Text;
using Microsoft.AspNetCore.Identity;

namespace HomeLine.Agency.Access;

/// <summary>
/// Long, not complicated: at least 15 characters with no demand for kinds of characters, at most 128, and not a password that everybody
/// tries first. Follows NIST SP 800-63B (second public draft, 3.1.1.2; the 15 from a summary of the final text). The list is our own, short one.
/// </summary>
public sealed class PasswordRule : IPasswordValidator<Account>
{
    public const int Shortest = 15;
    public const int Longest = 128;

    /// <summary>What must be left when repetition is taken away: our own default.</summary>
    private const int ShortestPiece = 8;

    private static readonly HashSet<string> TriedFirst = new(
        [
            "password", "passphrase", "passwort", "letmein", "welcome", "administrator", "admin", "changeme", "iloveyou", "qwerty",
            "qwertyuiop", "qwertyuiopasdfgh", "qwertyuiopasdfghjkl", "asdfghjkl", "abcdefghijklmno", "abcdefghijklmnop",
            "abcdefghijklmnopqrstuvwxyz", "123456789012345", "1234567890123456", "0123456789abcdef", "123456789123456",
            "1q2w3e4r5t6y7u8i", "1qaz2wsx3edc4rfv", "correcthorsebatterystaple", "thisisapassword", "thisismypassword", "mypassword",
            "monkey", "dragon", "football", "sunshine", "princess", "secret", "test", "hello", "summer", "winter",
            // Words of this trade and this program.
            "homeline", "homeinfusion", "infusion", "homehealth", "homehealthcare", "infusionnurse", "nurse", "nursing",
            "catheter", "centralline", "picc", "piccline", "dressing", "dressingchange", "patient", "pharmacy", "coordinator", "schedule",
        ],
        StringComparer.Ordinal);

    /// <inheritdoc/>
    public Task<IdentityResult> ValidateAsync(UserManager<Account> manager, Account user, string? password)
    {
        ArgumentNullException.ThrowIfNull(user);
        return Task.FromResult(Refuse(password ?? "", [user.DisplayName, user.UserName ?? "", LocalPart(user.Email)]) is { } refusal
            ? IdentityResult.Failed(new IdentityError { Code = refusal.Code, Description = refusal.Sentence })
            : IdentityResult.Success);
    }

    /// <summary>Why the password is refused, or nothing.</summary>
    /// <param name="password">The password, every character of it.</param>
    /// <param name="ownWords">The person's own name and address: they may be part of it, but not the whole.</param>
    public static Refusal? Refuse(string password, IEnumerable<string> ownWords)
    {
        int length = password.EnumerateRunes().Count();
        if (length < Shortest)
            return new Refusal("password-short", $"It has {length} characters; at least {Shortest} are needed.", "Use several words. Spaces are fine.");
        if (length > Longest)
            return new Refusal("password-long", $"It has {length} characters; at most {Longest} are allowed.", "Use a shorter one.");
        string plain = Plain(password), once = Once(plain);
        if (once.EnumerateRunes().Count() < ShortestPiece || TriedFirst.Contains(plain) || TriedFirst.Contains(once))
            return new Refusal("password-common", "It is among the passwords that are tried first.", "Use several words that have nothing to do with each other.");
        if (ownWords.Select(Plain).Any(word => word.Length > 0 && (word == plain || word == once)))
            return new Refusal("password-own-name", "It is your own name or address.", "Use several words that have nothing to do with each other.");
        return null;
    }

    /// <summary>Letters and digits alone, in lower case: "Pass Word" and "password!" are the same guess. A text of other signs stays whole.</summary>
    private static string Plain(string text)
    {
        string letters = string.Concat(text.Normalize(NormalizationForm.FormKC).Where(char.IsLetterOrDigit)).ToLowerInvariant();
        return letters.Length >= ShortestPiece ? letters : text.ToLowerInvariant();
    }

    /// <summary>The shortest piece that, repeated, gives the whole: a word written twice is no longer secret than once.</summary>
    private static string Once(string text)
    {
        for (int size = 1; size <= text.Length / 2; size++)
        {
            if (text.Length % size == 0 && Enumerable.Range(size, text.Length - size).All(i => text[i] == text[i - size])) return text[..size];
        }
        return text;
    }

    private static string LocalPart(string? email) => email?.Split('@')[0] ?? "";
}
