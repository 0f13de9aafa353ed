using System.Collections.Immutable;
using Microsoft.AspNetCore.Identity;

namespace HomeLine.Agency.Access;

/// <summary>Makes an account inside the work under way.</summary>
internal static class NewAccount
{
    /// <summary>Without a password the account waits for its activation.</summary>
    public static async Task<Outcome<Account>> MakeAsync(
        UserManager<Account> accounts, string name, string email, ImmutableArray<AgencyRole> roles, string? nurseId, string? password)
    {
        if (string.IsNullOrWhiteSpace(name))
            return new Refusal("account-name", "The name is missing.", "Enter the name as it should stand in the record.");
        if (!email.Contains('@', StringComparison.Ordinal))
            return new Refusal("account-email", "This is not an e-mail address.", "Enter an address; it is the sign-in name, nothing is sent to it.");
        if (roles.IsEmpty)
            return new Refusal("account-roles", "No role is chosen.", "Choose at least one role.");
        var account = new Account { DisplayName = name.Trim(), UserName = email.Trim(), Email = email.Trim(), NurseId = nurseId };
        IdentityResult made = password is null ? await accounts.CreateAsync(account) : await accounts.CreateAsync(account, password);
        if (!made.Succeeded) return Why(made);
        IdentityResult given = await accounts.AddToRolesAsync(account, roles.Distinct().Select(r => r.ToString()));
        return given.Succeeded ? account : Why(given);
    }

    public static Refusal Why(IdentityResult result)
    {
        IdentityError error = result.Errors.First();
        return error.Code is "DuplicateUserName" or "DuplicateEmail"
            ? new Refusal("account-exists", "There is already an account with this address.", "Use another address, or change that account.")
            : new Refusal(error.Code, error.Description, "Correct it and try again.");
    }
}
