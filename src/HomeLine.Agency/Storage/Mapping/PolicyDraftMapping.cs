using HomeLine.Agency.PolicyLibrary;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class PolicyDraftMapping : IEntityTypeConfiguration<PolicyDraft>
{
    public void Configure(EntityTypeBuilder<PolicyDraft> builder)
    {
        builder.ToTable("policy_drafts");
        builder.WrittenOnce().HasKey(d => d.Number);
        builder.Property(d => d.Number).ValueGeneratedNever();
        builder.Property(d => d.Changes).AsJson();
    }
}
