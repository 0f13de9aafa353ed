using HomeLine.Agency.PolicyLibrary;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PolicyVerdictMapping : IEntityTypeConfiguration<PolicyVerdict>
{
    public void Configure(EntityTypeBuilder<PolicyVerdict> builder)
    {
        builder.ToTable("policy_verdicts");
        // A draft has one end, whoever is first.
        builder.WrittenOnce().HasKey(v => v.Draft);
        builder.Property(v => v.Draft).ValueGeneratedNever();
        builder.HasOne<PolicyDraft>().WithMany().HasForeignKey(v => v.Draft).HasPrincipalKey(d => d.Number).OnDelete(DeleteBehavior.Restrict);
    }
}
