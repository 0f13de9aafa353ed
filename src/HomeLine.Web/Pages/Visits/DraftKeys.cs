using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.AspNetCore.DataProtection;
using NodaTime;

namespace HomeLine.Web.Pages.Visits;

/// <summary>
/// Keys for what a device keeps of a form while there is no signal. The device keeps the key only sealed; this program opens the seal for the person it was
/// made for, for three days. A lost telephone, a closed account or three days gone by leave nothing that can be read.
/// </summary>
public sealed class DraftKeys(IDataProtectionProvider protection, IClock clock)
{
    /// <summary>How long a seal can be opened again: a long weekend without signal, our own default. The device throws away sooner what does not wait to be sent.</summary>
    public static readonly Duration Life = Duration.FromDays(3);

    private const int KeyBytes = 32;
    private readonly IDataProtector protector = protection.CreateProtector("HomeLine.VisitDraft");

    /// <summary>A new key for a person, in the clear for the page and sealed for the device.</summary>
    public DraftKey New(string person)
    {
        string key = Convert.ToBase64String(RandomNumberGenerator.GetBytes(KeyBytes));
        return new DraftKey(key, protector.Protect(JsonSerializer.Serialize(new Sealed(person, clock.GetCurrentInstant().ToUnixTimeSeconds(), key))));
    }

    /// <summary>The key behind a seal; nothing when it was made for somebody else, is too old, or was tampered with.</summary>
    public string? Open(string person, string seal) => Read(seal) is { } found && found.Person == person ? found.Key : null;

    /// <summary>Whose seal it is; nobody's when it is too old or was tampered with.</summary>
    public string? PersonOf(string seal) => Read(seal)?.Person;

    private Sealed? Read(string seal)
    {
        try
        {
            Sealed? found = JsonSerializer.Deserialize<Sealed>(protector.Unprotect(seal));
            return found is not null && clock.GetCurrentInstant() - Instant.FromUnixTimeSeconds(found.Made) < Life ? found : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    private sealed record Sealed(string Person, long Made, string Key);
}

/// <summary>A key in the clear, and sealed.</summary>
public sealed record DraftKey(string Key, string Seal);
