using HomeLine.Agency.Access;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HomeLine.Agency.Storage.Mapping;

internal sealed class ActivationMapping : IEntityTypeConfiguration<Activation>
{
    public void Configure(EntityTypeBuilder<Activation> builder)
    {
        builder.ToTable("activations");
        builder.HasKey(a => a.SecretHash);
        builder.HasOne<Account>().WithMany().HasForeignKey(a => a.AccountId);
    }
}
