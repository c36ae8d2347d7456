### Tous les textes du cahier, en français, dans la syntaxe de Fluent. Ce qui suit un « $ » est rempli.
###
### Termes : texte français du VIM (JCGM 200:2012) et du GUM (JCGM 100:2008 (F)). Unités, nombres et espaces : Brochure sur
### le SI, 9e édition, 5.4. Espace fine insécable devant ; ! ? et dans les guillemets, espace insécable devant : et %
### (Imprimerie nationale, Lexique des règles typographiques). Le lecteur est vouvoyé.

## La page

language = fr
language-name = français
app = Slope of Light
outline = Sommaire
outline-help = Aide
leaf-bench = Banc
beside = Ce qui en résulte
beside-bench = Dessin et plan
beside-line = Droite et résidus
beside-report = Résultat et pages imprimées
untitled = Cahier sans titre
list = { $all }
loading = Ouverture du cahier…
close = Fermer
stop = Arrêter
remove = Supprimer
browser-says = le navigateur dit : « { $words } »

## Une section qui vient plus tard

section-loading = Chargement de cette section…
section-failed = La section « { $name } » n’a pas pu être chargée ({ $why }). Tout le reste fonctionne, et ce que vous saisissez est conservé. Réessayez ; si cela n’aide pas, rechargez la page.
section-again = Réessayer
section-waits = Rien à montrer pour l’instant : voir la section « { $section } ».
section-other-notebook = Un autre cahier a été ouvert avant que la section « { $name } » ne soit chargée : votre demande n’a pas été exécutée. Répétez-la dans le cahier voulu.

## Le bandeau du haut

strip-title = Titre du cahier
strip-title-hint = Donnez un titre à ce cahier
strip-no-c = pas encore déterminée
strip-no-result = pas encore de résultat
strip-result-said = c vaut maintenant { $c }
strip-rows = Lignes retenues : { $used } sur { $all }
strip-no-notices = aucune remarque
strip-notices =
    { $n ->
        [one] { $n } remarque
       *[other] { $n } remarques
    }
strip-undo = Annuler
strip-redo = Rétablir
strip-notebooks = Cahiers
strip-settings = Réglages

## Enregistrement

saving-saved = Enregistré
saving-saving = Enregistrement…
saving-not-saved = Non enregistré
saving-reading = Lecture seule
saving-no-journal = Ce navigateur bloque le stockage : rien n’est enregistré. Téléchargez l’archive avant de fermer la page.
saving-full = Le stockage du navigateur est plein : vos dernières modifications ne sont pas enregistrées. Téléchargez l’archive maintenant. Supprimez définitivement des cahiers pour libérer de la place. La page continue d’essayer.
saving-failed = Vos dernières modifications ne sont pas enregistrées ({ $why }). La page continue d’essayer. Par prudence, téléchargez l’archive.
saving-no-answer = la base de données ne répond pas
saving-shelf-full = Le stockage du navigateur est presque plein. Votre travail est encore enregistré, modification par modification. Supprimez définitivement des cahiers pour libérer de la place.
saving-other-tab = Ce cahier est ouvert en écriture dans une autre fenêtre. Ici, il est en lecture seule.
saving-take-over = Écrire ici
saving-apart-title = { $title } (saisi dans une autre fenêtre)
saving-apart = Une autre fenêtre a pris la main avant l’enregistrement de vos dernières modifications. Elles sont conservées dans le cahier « { $title } ».
saving-open-apart = L’ouvrir
saving-try-again = Réessayer maintenant
saving-stay = Les dernières modifications de ce cahier ne sont pas encore enregistrées. Téléchargez d’abord l’archive.
saving-aside =
    { $n ->
        [one] { $n } modification ultérieure de ce cahier n’a pas pu être jointe à ce qui est enregistré ; elle est conservée à part.
       *[other] { $n } modifications ultérieures de ce cahier n’ont pas pu être jointes à ce qui est enregistré ; elles sont conservées à part.
    }
saving-take-bundle = Télécharger l’archive
saving-dismiss = Fermer ce message
saving-cannot-open = « { $title } » n’a pas pu être ouvert et reste inchangé : { $why }

## Sans réseau

offline-newer = Une version plus récente de cette page est prête. Votre travail est conservé quand vous y passez.
offline-use = L’utiliser maintenant

## Précautions

cautions-title = Précautions
cautions-lead = À lire avant de mettre le laser en marche. Les instructions de votre responsable de la sécurité laser et vos règles locales priment sur cette page. Elle ne calcule aucune limite d’exposition.
cautions-summary = Points à surveiller
cautions-group-invisible = Ce faisceau est invisible
cautions-invisible = La longueur d’onde déclarée, { $wavelength }, est hors du domaine visible (400 nm à 700 nm, IEC 60825-1). Vous ne voyez pas ce faisceau, et vos yeux ne se ferment pas ni ne s’en détournent. Considérez-le comme présent dès que la source est alimentée.
cautions-find = Ne cherchez un faisceau invisible qu’avec un détecteur, ou avec une carte de visualisation faite pour sa longueur d’onde, si votre responsable de la sécurité laser l’autorise : jamais avec l’œil.
cautions-group-beam = Le faisceau
cautions-eyes = Ne regardez jamais dans le faisceau ni le long du rail, quelle que soit la classe du laser. Une seule impulsion peut aveugler, même par réflexion. Un faisceau invisible n’avertit pas.
cautions-height = Gardez les yeux au-dessus du faisceau. Fermez l’obturateur avant de vous pencher pour lire une règle : vos yeux arrivent à la hauteur du faisceau. Ceux des personnes assises ou plus petites peuvent déjà s’y trouver.
cautions-reflections = Les règles métalliques, les chariots, les outils, les bagues et les montres réfléchissent la lumière : retirez vos bijoux. Gardez le trajet du faisceau capoté, ou entre des surfaces mates, et jamais à la hauteur des yeux de quiconque. Placez un arrêt de faisceau derrière le dernier rail.
cautions-group-protection = Protection des yeux et de la peau
cautions-eyewear = Portez des lunettes de protection prévues à la fois pour la longueur d’onde et pour les impulsions employées. Porter des lunettes n’autorise jamais à regarder dans le faisceau.
cautions-skin = La lumière ultraviolette nuit aussi à la peau : gardez la peau couverte. Ne repérez un faisceau ultraviolet avec une carte fluorescente que si votre responsable de la sécurité laser l’autorise, et avec vos lunettes de protection.
cautions-group-trained = Alignement, haute tension et gaz
cautions-alignment = Seules des personnes formées alignent le faisceau, à la puissance la plus basse. Ne déplacez les chariots que lorsque l’obturateur est fermé.
cautions-voltage = Les alimentations à impulsions et les alimentations de polarisation des détecteurs sont sous haute tension, et leurs câbles aussi : ne les débranchez ni ne les ouvrez jamais. Une alimentation à impulsions peut garder une charge mortelle après l’arrêt. Seul le personnel habilité ouvre les boîtiers.
cautions-gas = Sources à gaz : les bouteilles doivent être arrimées et la salle ventilée. Les décharges électriques et la lumière ultraviolette peuvent produire de l’ozone, nocif pour les poumons.
cautions-group-room = La salle
cautions-room = On peut trébucher sur les rails et les câbles. Gardez libres les issues de secours. Fermez la porte, affichez le panneau d’avertissement et tenez à l’écart les personnes non concernées.
cautions-group-stop = Arrêt, et après une exposition
cautions-stop = Sachez comment arrêter avant de commencer : obturateur, interrupteur à clé, arrêt d’urgence.
cautions-exposure = Après une exposition possible d’un œil ou de la peau : arrêtez, signalez-la aussitôt et faites-vous examiner par un médecin, même si rien ne fait mal.
cautions-rules = Mesures à prendre par les utilisateurs : IEC TR 60825-14 et vos règles nationales. Classes de laser : IEC 60825-1.
cautions-name = Votre nom
cautions-name-needed = Saisissez d’abord votre nom.
cautions-read-by = Précautions lues : { $name }, le { $date } à { $time } UTC. Ceci n’est pas une autorisation.
cautions-read-by-undated = Précautions lues : { $name }. Ceci n’est pas une autorisation.
cautions-unread = Personne n’a déclaré dans ce cahier avoir lu ces précautions.
cautions-local-edit = Ajouter des règles locales et un contact
cautions-local-hint = Pour les enseignants. Elles figurent au-dessus des précautions, ici et dans le rapport, et sont conservées dans ce cahier.
fields-local_rules = Règles de ce laboratoire
fields-local_contact = Contact
cautions-contact = Contact : { $contact }
cautions-read = J’ai lu ceci. Ce n’est pas une autorisation : commencez quand la personne responsable le dit.

## Ce qui vient ensuite dans un cahier sans lectures

next-cautions = D’abord : lisez les précautions, puis saisissez votre nom au-dessous.
next-go-cautions = Aller aux précautions
next-rail = Ensuite : décrivez le banc, rail par rail.
next-go-rail = Aller aux rails
next-place = Ensuite : dites où se trouve chaque rail.
next-go-place = Aller à ce rail
next-row = Les rails sont décrits. Ensuite : la première lecture.
next-go-row = Aller aux lectures

## Montage

apparatus-title = Montage
apparatus-path = Sur le chariot
apparatus-paths-detector = détecteur B (la lumière parcourt le rail une fois)
apparatus-paths-mirror = un miroir (la lumière fait l’aller-retour)
apparatus-beam = Un faisceau incliné est
apparatus-beams-wide = plus large que le détecteur : la lumière parcourt r·cos θ
apparatus-beams-followed = fin, et le détecteur le suit en travers du rail : la lumière parcourt r ÷ cos θ
apparatus-beam-hint = r est la distance lue le long du rail, θ l’angle entre le faisceau et le rail. La correction diminue c pour un faisceau large et l’augmente pour un faisceau fin.
apparatus-source = Source
apparatus-screen = Écran
apparatus-air = Air
apparatus-air-hint = L’air ralentit l’impulsion d’environ 3 pour 10 000. Laissez ces champs vides si vous n’avez pas mesuré ces grandeurs. Une valeur peut porter son incertitude-type entre parenthèses, comme 21,5(3) ; un nombre tapé après elle avec ± est pris de même.
apparatus-instruments = Instruments, câbles et déclenchement
apparatus-instruments-hint = Ce qu’il faut à quelqu’un d’autre pour monter le même banc : types et numéros de série, longueurs des câbles, trajet jusqu’au détecteur fixe, déclenchement de l’écran. Rien n’en est calculé ; le rapport le montre.
photo-title = Photo du montage
photo-add = Ajouter une photo du montage
photo-coming = Lecture de { $name }…
photo-of = Le montage : { $name }
photo-missing = { $name } n’est pas conservé dans ce navigateur. La photo se trouve dans l’archive d’où elle vient.
photo-remove = Retirer la photo
photo-removed = La photo du montage a été retirée.
apparatus-blank = Chariot, source, rails, écran, air
apparatus-lines-detector =
    { $n ->
        [one] Un rail : { $rails }. Détecteur B sur le chariot
       *[other] { $n } rails : { $rails }. Détecteur B sur le chariot
    }
apparatus-lines-mirror =
    { $n ->
        [one] Un rail : { $rails }. Miroir sur le chariot
       *[other] { $n } rails : { $rails }. Miroir sur le chariot
    }
apparatus-drawing = Le banc, à l’échelle
fields-instruments = Instruments, avec types et numéros de série
fields-cables = Câbles, avec longueurs et repères
fields-fixed_arm = Bras fixe
fields-trigger = Déclenchement
fields-edge_fraction = Fraction de leur hauteur à laquelle les fronts sont lus
fields-wavelength = Longueur d’onde dans le vide
fields-pulse_rate = Fréquence des impulsions
fields-beam_angle = Plus grand angle possible entre faisceau et rail
fields-small_divisions = Petites divisions par division
fields-edge_half_width = Incertitude d’une lecture de front
fields-edge_reason = Raison de cette incertitude
fields-screen_width = Divisions sur la largeur de l’écran
fields-time_base_uncertainty = Base de temps : incertitude relative
fields-temperature = Température de l’air
fields-pressure = Pression de l’air
fields-humidity = Humidité relative
fields-carbon_dioxide = Dioxyde de carbone

## Le banc en mots

bench-position-unknown = Sa position n’est pas encore connue.
bench-rail =
    { $rows ->
        [one] { $name } ({ $rows } ligne). { $stands }
       *[other] { $name } ({ $rows } lignes). { $stands }
    }

## Rails

rails-title = Rails
rails-hint = Décrivez les rails à partir de la lame séparatrice. Chaque règle a son propre zéro. Le raccord, jonction de deux rails, dit où se trouve la règle suivante.
rails-add = Ajouter un rail
rails-remove = Supprimer ce rail
rails-removed = { $name } a été supprimé. Ce qui était saisi dans ses lignes est conservé.
rails-numbered = Rail { $n }
rails-legend = Rail { $n } : { $name }
rails-fields-name = Nom employé dans les lectures
rails-fields-from = Première graduation
rails-fields-to = Dernière graduation
rails-fields-reading_uncertainty = Incertitude d’une lecture de la règle
rails-fields-scale_uncertainty = Incertitude relative de l’échelle
rails-unit = Unité de la règle
rails-units-millimetre = millimètres
rails-units-centimetre = centimètres
rails-units-metre = mètres
rails-units-inch = pouces
rails-sense = Quand le chariot s’éloigne, les lectures
rails-senses-grows = augmentent
rails-senses-falls = diminuent
rails-stands = La graduation { $mark } est à { $distance } de la lame séparatrice.
rails-fitted = La position de ce rail est ajustée avec la droite, à partir de la graduation { $mark } à { $distance }.
rails-moved = L’ajustement déplace ce rail de { $step } vers l’extérieur.
rails-step = Les lectures montrent un saut de { $step } entre ce rail, avec ceux qui sont raccordés après lui, et les autres rails. Il n’est pas significativement différent de zéro ({ $p }).
rails-step-significant = Les lectures montrent un saut de { $step } entre ce rail, avec ceux qui sont raccordés après lui, et les autres rails. Il est significativement différent de zéro ({ $p }).

## Raccords

splice-legend = Position de ce rail
splice-kind = Connue par
splice-kinds-unsaid = pas encore déclarée
splice-kinds-at_splitter = lecture de la règle à la lame séparatrice
splice-kinds-at_distance = distance mesurée d’une graduation
splice-kinds-joined = graduations en regard à la jonction
splice-kinds-overlap = positions lues sur les deux règles
splice-kinds-free = inconnue : ajustée avec la droite
splice-mark = Graduation de ce rail
splice-mark-at-splitter = Graduation à la lame séparatrice
splice-distance = Sa distance à la lame séparatrice
splice-mark_before = En regard de cette graduation du rail précédent
splice-gap = Écart entre elles
splice-uncertainty = Incertitude de cette position
splice-here = Position { $n }, lue sur ce rail
splice-before = Position { $n }, lue sur le rail précédent
splice-add-pair = Ajouter une position
splice-remove-pair = Supprimer la position { $n }

## Réglages de la base de temps

settings-title = Réglages de la base de temps
settings-hint = À remplir seulement si un réglage de la base de temps a sa propre incertitude. Elle est commune à toutes les lignes prises avec ce réglage.
settings-add = Ajouter un réglage
settings-legend = Réglage { $n }
settings-time = Temps par division
settings-uncertainty = Incertitude relative

## Autres composantes de l’incertitude

shared-title = Autres composantes de l’incertitude
shared-hint = Pour un effet que ni les rails ni les bases de temps ne couvrent. Commun : décale toutes ses lignes ensemble (corrélées). Indépendant : différent pour chaque ligne.
shared-add = Ajouter une composante
shared-legend = Composante { $n }
shared-name = Nom
shared-acts-on = Agit sur
shared-acts-distances = les distances
shared-acts-delays = les retards
shared-effect = Effet
shared-effects-offset = décalage commun
shared-effects-scale = facteur d’échelle commun
shared-effects-noise = indépendant pour chaque ligne
shared-rows = Lignes
shared-all = toutes les lignes
shared-rail = lignes du rail { $name }
shared-time-base = lignes à { $text } ns par division
shared-chosen = lignes choisies
shared-which = Lignes choisies
shared-uncertainty = Incertitude de cette composante
shared-shape = Loi de probabilité
shared-shapes-normal = normale
shared-shapes-rectangular = rectangulaire
shared-shapes-triangular = triangulaire
shared-shapes-arcsine = arc sinus
shared-shapes-student = de Student
shared-freedom = Degrés de liberté

## Lectures

readings-title = Lectures
readings-hint = Une ligne pour chaque position du chariot. Entrée mène à la ligne suivante, Tab à la cellule suivante. Les lectures répétées d’un front vont dans une seule cellule, séparées par des points-virgules (;). Un bloc copié d’un tableur peut être collé dans n’importe quelle cellule. Appuyez sur un numéro de ligne pour voir comment sa distance, son retard et son résidu ont été calculés.
readings-start = Pas encore de lectures. Écrivez dans la ligne ci-dessous. Les valeurs grises sont des suggestions : écrire dans la ligne, ou Entrée, les accepte.
readings-direct = Saisir directement la distance ou le retard
readings-caption = Lectures, une ligne pour chaque position du chariot
readings-row = Ligne
readings-columns-rail = Rail
readings-columns-reading = Lecture de la règle
readings-columns-time_base = Base de temps
readings-columns-edge_a = Front A
readings-columns-edge_b = Front B
readings-columns-distance = Distance saisie
readings-columns-distance_uncertainty = u(d)
readings-columns-delay = Retard saisi
readings-columns-delay_uncertainty = u(Δt)
readings-columns-remark = Observation
readings-units-reading = son unité
readings-units-time_base = ns/div
readings-units-edge_a = div
readings-units-edge_b = div
readings-units-distance = m
readings-units-distance_uncertainty = m
readings-units-delay = ns
readings-units-delay_uncertainty = ns
readings-outputs-distance = d
readings-outputs-delay = Δt
readings-outputs-residual = Résidu
readings-output-units-distance = m
readings-output-units-delay = ns
readings-output-units-residual = normalisé
readings-output-names-distance = Distance
readings-output-names-delay = Retard
readings-output-names-residual = Résidu
readings-strike = Écarter
readings-strike-row = Écarter la ligne { $n }
readings-restore = Réintégrer
readings-restore-row = Réintégrer la ligne { $n }
readings-not-used = incomplète
readings-new-row = nouv.
readings-work-of = Calcul de la ligne { $n }
readings-new-cell = { $column }, nouvelle ligne
readings-cell = { $column }, ligne { $n }
readings-struck = Écartée : { $reason }
readings-problem = { $column } : { $problem }
readings-uncertainty-of = { $quantity }, { $u }

## Plan

plan-title = Plan de mesure
plan-hint = Avant la séance : choisissez des positions et voyez l’incertitude à attendre. Saisissez les positions, ou déplacez leurs poignées le long des rails, à la souris, au doigt ou avec les flèches.
plan-drawing = Les rails à l’échelle, avec les positions prévues
plan-ends = { $near } à { $nearAt }, { $far } à { $farAt }
plan-caption = Positions prévues
plan-position = N°
plan-columns-rail = Rail
plan-columns-reading = Lecture de la règle
plan-columns-time_base = ns/div
plan-columns-repeats = Lignes
plan-distance = d
plan-cell = { $column }, position prévue { $n }
plan-handle = Position prévue { $n }
plan-place = { $reading } sur le rail { $rail }, à { $distance } de la lame séparatrice
plan-place-effect = { $reading } sur le rail { $rail }, à { $distance } de la lame séparatrice : u(v)/v passe de { $before } à { $after }
plan-moving = { $place }. { $expected }
plan-expected =
    { $rows ->
        [one] Attendu : u(v)/v = { $u } avec { $rows } ligne.
       *[other] Attendu : u(v)/v = { $u } avec { $rows } lignes.
    }
plan-limits = Plus grande composante : { $name } ({ $share } % de la variance).
plan-compared =
    { $rows ->
        [one] Attendu : { $planned } avec { $rows } ligne ; obtenu : { $achieved } avec { $taken }.
       *[other] Attendu : { $planned } avec { $rows } lignes ; obtenu : { $achieved } avec { $taken }.
    }
plan-turned-out-kept = L’incertitude prévue est atteinte.
plan-turned-out-missing = Des lignes prévues ne sont pas encore lues.
plan-turned-out-worse = L’incertitude est plus grande que prévu : comparez au plan la dispersion, les positions et le bilan.
plan-warnings-off_rail =
    { $n ->
        [one] La position { $positions } n’est pas sur son rail.
       *[other] Les positions { $positions } ne sont pas sur leur rail.
    }
plan-warnings-beyond_reach =
    { $n ->
        [one] Position { $positions } : le retard dépasse une période des impulsions, si bien que le front A suivant arrive avant le front B.
       *[other] Positions { $positions } : les retards dépassent une période des impulsions, si bien que le front A suivant arrive avant le front B.
    }
plan-warnings-off_screen =
    { $n ->
        [one] Position { $positions } : le retard ne tient pas sur l’écran avec cette base de temps.
       *[other] Positions { $positions } : les retards ne tiennent pas sur l’écran avec ces bases de temps.
    }
plan-warnings-side =
    { $have ->
        [one] Le rail { $rail } n’a que { $have } position ; il en faut au moins trois de chaque côté pour tester un raccord.
       *[other] Le rail { $rail } n’a que { $have } positions ; il en faut au moins trois de chaque côté pour tester un raccord.
    }
plan-warnings-cluster = Toutes les positions se trouvent sur { $length } des { $whole } disponibles : une étendue courte donne une pente incertaine.
plan-warnings-few =
    { $rows ->
        [one] Une seule ligne est prévue : avec moins de 5, les degrés de liberté sont trop peu nombreux pour juger la dispersion.
       *[other] Seulement { $rows } lignes sont prévues : avec moins de 5, les degrés de liberté sont trop peu nombreux pour juger la dispersion.
    }
plan-add = Prévoir une position
plan-remove = Supprimer la position prévue { $n }
plan-removed = La position { $n } a été supprimée.
plan-take = Ajouter les lignes prévues aux lectures
plan-taken = Les lignes prévues ont été ajoutées aux lectures.
plan-offers-spread = { $rows } lignes réparties sur tous les rails, pour pouvoir tester la courbure et les raccords : u(v)/v = { $u }.
plan-offers-ends = { $rows } lignes, la moitié à chaque extrémité (la courbure et les sauts aux raccords ne peuvent pas être détectés) : u(v)/v = { $u }.
plan-use = Prévoir ces positions
plan-planned = Ces positions sont maintenant prévues.
plan-next = La prochaine lecture
plan-reasons-first = Une droite demande deux positions, les plus éloignées possible.
plan-reasons-little = Une lecture de plus n’aidera guère : voyez la plus grande composante.
plan-reasons-lever = Cette position réduit le plus u(v) (plus grand levier) : elle est à { $arm } de la moyenne des autres.
plan-reasons-side =
    { $have ->
        [one] Ce rail a { $have } position. Avec trois ou plus, le saut à son raccord peut être testé.
       *[other] Ce rail a { $have } positions. Avec trois ou plus, le saut à son raccord peut être testé.
    }
plan-reasons-gap = La lecture la plus proche est à { $gap } : une courbure ou un saut n’y serait pas vu.
plan-add-row = Ajouter cette ligne
plan-add-to-plan = Ajouter au plan
plan-figures-title = À quoi s’attendre
plan-figures-expected-name = incertitude attendue de v
plan-figures-expected-source = ISO/TS 28037:2010, articles 9 et 10
plan-figures-expected-meaning = Calculée par le même ajustement que les résultats. Elle dépend des positions et des incertitudes déclarées, non des valeurs mesurées.
plan-figures-reading-name = part des lectures indépendantes
plan-figures-reading-source = ISO/TS 28037:2010, articles 6 et 7
plan-figures-reading-meaning = Indépendante pour chaque ligne : davantage de lignes et une étendue plus longue la réduisent. La formule est celle de lignes identiques sans composantes communes.
plan-figures-shared-name = part commune à plusieurs lignes
plan-figures-shared-meaning = Vient des raccords, des échelles, des bases de temps et du faisceau, pondérés comme dans ce plan.
plan-figures-floor-name = limite inférieure, avec un nombre illimité de répétitions
plan-figures-floor-meaning = Les composantes corrélées ne se moyennent pas. De meilleurs raccords, échelles ou bases de temps abaissent cette limite.
plan-figures-again-name = avec une ligne de plus à chaque position
plan-figures-again-meaning = Chacune est une nouvelle ligne : éloignez le chariot, puis ramenez-le.
plan-figures-rail-name = avec un rail de plus comme le dernier
plan-figures-rail-meaning = On suppose son raccord aussi bien connu que le dernier, et des positions comme sur ce rail.
plan-figures-faster-name = avec une base de temps deux fois plus rapide
plan-figures-faster-meaning = La moitié du temps par division, partout où le retard tient encore sur l’écran.
plan-figures-achieved-name = obtenu jusqu’ici
plan-figures-achieved-meaning = D’après les lectures faites et le bilan.
plan-figures-reach-name = plus grande distance à cette fréquence d’impulsions
plan-figures-reach-meaning = Le retard y est égal à une période des impulsions. Au-delà, le front A suivant arrive avant le front B.
plan-figures-step-name = plus petit pas de distance discernable
plan-figures-step-source = pratique courante
plan-figures-step-meaning = Pour des pas plus petits, les retards diffèrent de moins de deux fois l’incertitude-type de leur différence, avec la base de temps la plus rapide du plan.
plan-faster-rows =
    { $rows ->
        [one] { $u } ({ $rows } ligne)
       *[other] { $u } ({ $rows } lignes)
    }
plan-none-faster = aucun retard ne tiendrait alors sur l’écran
plan-rehearsal = Entraînement
plan-rehearsal-hint = Exercez-vous à toute la séance : un nouveau cahier avec ce banc et ce plan, simulé avec des erreurs tirées d’après vos incertitudes déclarées. Les valeurs vraies peuvent être montrées ensuite.
plan-rehearse = S’entraîner
plan-rehearsal-of = Entraînement : { $title }
plan-rehearsing = Ceci est l’entraînement, un cahier à part. Ses lectures sont simulées.
plan-show-truth = Montrer les valeurs vraies
plan-stated = { $value } (déclaré : u = { $u })

## Un bloc collé

pasted-turned = Les nombres collés utilisaient l’autre séparateur décimal et ont été convertis.
pasted-headed = Les en-têtes « { $headings } » ont été laissés de côté.

## Le calcul d’une ligne

row-work-none = Cette ligne n’a pas encore de distance ou de retard.
row-work-distance = Le long du faisceau, à partir de la lame séparatrice. Son incertitude-type combine celle de la lecture de la règle et ce que la ligne partage avec d’autres : raccords, échelle de la règle.
row-work-distance-source = d = o + s·(r − m) : o est la position de la graduation m, s = ±1 le sens de la règle (pratique courante). Incertitudes communes : JCGM 100:2008, 5.2.2
row-work-traces = Mesuré sur les traces enregistrées, avec la datation choisie dans « Retards ».
row-work-picture = D’après les marques sur la photo, après correction de la perspective par les coins de la grille.
row-work-picture-source = JCGM 100:2008, 5.2.2 ; les marques sont dans « Retards »
row-work-screen = Position du front B moins celle du front A sur l’écran, moyenne des lectures répétées, multipliée par la base de temps.
row-work-screen-source = Chaque front est lu à ±a près : JCGM 100:2008, 4.3.7. Lectures répétées : 4.2.3
row-work-typed = Saisi directement.
row-work-typed-source = tel que saisi
row-work-residual = résidu normalisé
row-work-residual-meaning = Le résidu e = Δt − (t₀ + b·d), divisé par sa propre incertitude-type, compte tenu du levier de la ligne. Si les distances sont incertaines aussi, ou si des lignes partagent des composantes de l’incertitude, e est ce qui reste une fois celles-ci ajustées.
row-work-residual-source = W. Baarda, A Testing Procedure for Use in Geodetic Networks (1968) ; pour des lignes indépendantes, le résidu studentisé
row-pad-minus = Moins
row-pad-semicolon = Point-virgule
row-pad-abc = abc
row-pad-letters = abc : lettres, pour une unité

## Retards

delays-title = Retards
delays-hint = Les retards peuvent être tirés de photos ou de traces enregistrées au lieu d’être saisis.
fields-mark_uncertainty = Incertitude d’une marque sur une photo
fields-trace_level = Seuil fixe au-dessus de la ligne de base
fields-trace_fraction = Fraction constante de l’amplitude
delays-from-picture = photo
delays-from-traces = traces
delays-jump-picture = Montrer la photo de la ligne { $n }
delays-jump-traces = Montrer les traces de la ligne { $n }

## Photos

pictures-title = Photos de l’écran
pictures-hint = Ajoutez d’un coup les photos de toute une série : choisissez-les, déposez-les ici, ou collez-en une. Un nom de fichier comme « 1250 mm.jpg » donne la lecture de la règle. Une vidéo peut être ajoutée aussi : ses images servent de photos. Chaque photo est réduite et conservée dans ce navigateur. Ses métadonnées (lieu, heure, appareil) sont supprimées.
pictures-add = Ajouter des photos
pictures-columns = Divisions sur la largeur de la grille
pictures-rows = Divisions sur la hauteur de la grille
pictures-progress = Ajout de la photo { $n } sur { $all }…
pictures-added =
    { $n ->
        [one] { $n } photo a été ajoutée.
       *[other] { $n } photos ont été ajoutées.
    }
pictures-refused-title = Non ajoutées :
pictures-full = { $name } : le stockage du navigateur est plein, la photo n’a pas été ajoutée. Tout ce qui précède est conservé. Téléchargez l’archive. Les photos des cahiers supprimés définitivement sont effacées un jour ou plus après leur ajout, à l’ouverture de la page.
pictures-twice = { $name } est déjà la photo de la ligne { $n } : la même photo n’est pas une seconde lecture.
pictures-twice-chosen = { $name } a été choisie deux fois et ajoutée une fois.
pictures-replace = La ligne { $n } a déjà un retard tiré d’un fichier. Remplacer ce fichier par { $name } ?
pictures-other-reading = Le nom { $name } donne une autre lecture que celle de la ligne { $n } ({ $reading }). L’utiliser là quand même ?
pictures-use-it = L’utiliser
pictures-choose = Photo
pictures-option = Ligne { $n } : { $name }
pictures-option-unmarked = Ligne { $n } : { $name } (à marquer)
pictures-left =
    { $all ->
        [one] { $marked } photo sur { $all } est marquée.
       *[other] Photos marquées : { $marked } sur { $all }.
    }
pictures-loading = Recherche de la grille et des fronts…
pictures-missing = { $name } n’est pas conservée dans ce navigateur. Ses marques sont des nombres, la ligne reste donc valable. Une archive contient aussi la photo.
pictures-missing-marks = { $name } n’est pas conservée dans ce navigateur et n’a pas encore de marques. Ouvrez une archive qui la contient, ou ajoutez-la de nouveau.
pictures-broken = { $name } : le navigateur ne peut pas montrer la photo qu’il a conservée. Ajoutez-la de nouveau.
pictures-picture = La photo, avec sa grille dessinée par-dessus
pictures-mark-group = Marques
pictures-proposed = Ces marques sont des suggestions. Vérifiez que la grille en tirets recouvre celle de l’écran, et que A et B sont à mi-hauteur de leurs fronts. Déplacez ce qui est faux, puis acceptez.
pictures-serves = Cette photo utilise les marques de coin de la ligne { $n } (appareil non déplacé).
pictures-moved = L’appareil a bougé depuis la ligne { $n } : des marques de coin distinctes sont suggérées pour cette photo.
pictures-unseen = Les marques de coin de la ligne { $n } sont utilisées. Elles n’ont pas pu être vérifiées, car aucune grille n’a été trouvée ici : vérifiez que la grille en tirets recouvre celle de l’écran.
pictures-not-found = Rien n’est suggéré. { $why } Placez chaque marque.
pictures-no-edge = « { $name } » n’a pas été trouvé : placez sa marque sur le front.
pictures-doubts-lines = Doute : seule une partie de la grille a été vue.
pictures-doubts-border = Doute : une ligne du bord de la grille n’a pas été vue, ou des lignes continuent au-delà. Vérifiez les nombres de divisions.
pictures-doubts-cut = Doute : la grille déborde de la photo. Déclarez seulement les divisions qui y sont entières, et marquez les coins de cette partie.
pictures-doubts-turned = Doute : l’écran est couché sur le côté. Le premier coin est le coin supérieur gauche de l’écran, où qu’il soit sur la photo.
pictures-doubts-edge = Doute : un front n’est pas net, ou caché par un reflet, ou s’arrête en chemin vers le sommet, ou sa trace n’est pas horizontale avant lui ou montre une autre impulsion.
pictures-doubts-meet = Doute : les deux traces ont la même couleur et se rejoignent, un front peut donc appartenir à l’autre trace.
pictures-doubts-order = Doute : quel front est celui de A. Les photos ne le montrent pas avec certitude. Si les marques sont inversées, échangez-les.
pictures-doubted =
    { $n ->
        [one] Une marque est douteuse. « Accepter les marques » y mène d’abord : regardez-la à la loupe, et déplacez-la si elle est mal placée.
       *[other] { $n } marques sont douteuses. « Accepter les marques » mène d’abord à chacune : regardez-la à la loupe, et déplacez-la si elle est mal placée.
    }
pictures-exchange = Échanger A et B
pictures-checks-moved =
    { $n ->
        [0] Les contrôles de l’objectif ont été supprimés : aucune grille n’est vue là où les coins les placent.
       *[other] Les contrôles de l’objectif ont suivi les coins. Ceux sans ligne de grille ont été supprimés.
    }
pictures-how = Faites glisser une marque, ou cliquez là où doit aller celle qui est choisie. Les flèches la déplacent d’un pixel, avec Maj d’un dixième, avec Alt de dix ; plus et moins changent l’agrandissement, comme la molette et deux doigts. Entrée accepte.
pictures-closer = Agrandir la photo
pictures-wider = Réduire la photo
pictures-whole = Photo entière
pictures-nudges-left = D’un pixel à gauche
pictures-nudges-up = D’un pixel vers le haut
pictures-nudges-down = D’un pixel vers le bas
pictures-nudges-right = D’un pixel à droite
pictures-accept = Accepter les marques
pictures-next = Prochaine photo à marquer
pictures-still-sought = Pas encore accepté : placez d’abord { $names }.
pictures-grid-wrong = Pas encore accepté. { $why }
pictures-accepted = La ligne { $n } est marquée.
pictures-accepted-unused = La ligne { $n } est marquée, mais pas encore retenue. { $lacks }
pictures-all-marked = Toutes les photos sont marquées.
pictures-again = { $name }, marque { $n }
pictures-mark-again = Marquer « { $name } » une fois de plus
pictures-drop-mark = Supprimer la marque choisie
pictures-move-first = Placez la nouvelle marque sur le front : elle compte une fois déplacée.
pictures-own-corners = Utiliser des marques de coin distinctes
pictures-shared =
    { $n ->
        [one] Ses marques de coin servent à { $n } photo : en déplacer une change sa ligne.
       *[other] Ses marques de coin servent à { $n } photos : en déplacer une change toutes ces lignes.
    }
pictures-take-off = Retirer la photo de cette ligne
pictures-taken-off = La photo a été retirée de la ligne { $n }.
pictures-marks-a = Front A
pictures-marks-b = Front B
pictures-marks-corner = Coin
pictures-marks-check = Contrôle
pictures-corners-upper-left = Coin supérieur gauche
pictures-corners-upper-right = Coin supérieur droit
pictures-corners-lower-right = Coin inférieur droit
pictures-corners-lower-left = Coin inférieur gauche
pictures-check = Croisement { $n } de la grille, contrôle de l’objectif
pictures-place = { $x } pixels en largeur, { $y } en hauteur, { $state }
pictures-states-proposed = suggérée
pictures-states-doubted = douteuse
pictures-states-looked = douteuse, déjà regardée
pictures-states-sought = non trouvée
pictures-states-set = déplacée à la main
pictures-states-taken = acceptée
pictures-ends-title = Ligne de base et sommet des fronts
pictures-ends-hint = Là où les impulsions ont des hauteurs différentes, se chevauchent ou sortent de l’écran, la mi-hauteur est une supposition. Marquez pour chaque front où la trace quitte sa ligne de base et où elle atteint son sommet, ou déclarez que l’un ou l’autre est hors de l’écran. Le niveau est alors tracé : placez la marque du front là où la trace le croise. L’erreur possible du niveau entre dans l’incertitude.
pictures-ends-mark = Marquer ligne de base et sommet
pictures-ends-move = Placez cette marque, ou appuyez sur « Hors de l’écran ». Ligne de base et sommet comptent une fois les quatre marques traitées.
pictures-ends-look = Vérifiez cette marque : déplacez-la, appuyez sur « La marque est bonne » (ou Entrée), ou sur « Hors de l’écran ». Ligne de base et sommet comptent une fois les quatre marques traitées.
pictures-ends-right = La marque est bonne
pictures-ends-off = Hors de l’écran
pictures-ends-drop = Retirer ligne de base et sommet
pictures-marks-a-baseline = Front A : ligne de base
pictures-marks-a-top = Front A : sommet
pictures-marks-b-baseline = Front B : ligne de base
pictures-marks-b-top = Front B : sommet
pictures-fraction = Niveau en fraction de la hauteur
pictures-thickness = Épaisseur de la trace / px
pictures-thickness-found = Mesurée sur cette photo : { $n } px. Donnez une autre valeur si elle est fausse.
pictures-fields-rail = Rail
pictures-fields-reading = Lecture de la règle
pictures-fields-time_base = Temps par division
video-title = { $name } : cherchez une image où les traces sont nettes et complètes, puis utilisez-la.
video-place = Position dans la vidéo
video-at = { $time } s
video-earlier = Plus tôt
video-later = Plus tard
video-use = Utiliser cette image
video-done = En finir avec cette vidéo
video-broken = { $name } : le navigateur ne peut pas montrer cette vidéo. Convertissez-la dans un autre format, ou faites une capture d’écran de l’image et ajoutez-la.

## Traces

traces-title = Traces enregistrées
traces-hint = Ajoutez d’un coup les fichiers de traces de toute une série : choisissez-les ou leur dossier, ou déposez-les ici. Les deux traces peuvent être dans un même fichier, ou chacune dans le sien. Un nom de fichier comme « A 1250 mm ch1.csv » donne le rail, la lecture de la règle et la trace.
traces-add = Ajouter des fichiers de traces
traces-add-folder = Ajouter un dossier de traces
traces-looking = Examen des fichiers…
traces-busy =
    { $n ->
        [one] D’autres fichiers sont encore en cours de lecture : { $n } nouveau fichier n’a pas été ajouté. Ajoutez-le de nouveau ensuite.
       *[other] D’autres fichiers sont encore en cours de lecture : { $n } nouveaux fichiers n’ont pas été ajoutés. Ajoutez-les de nouveau ensuite.
    }
traces-given =
    { $files ->
        [one] { $files } fichier avec les traces d’une position. Vérifiez que les colonnes sont lues correctement, puis mesurez.
       *[other] { $pairs ->
            [one] { $files } fichiers avec les traces de { $pairs } position. Vérifiez que les colonnes sont lues correctement, puis mesurez.
           *[other] { $files } fichiers avec les traces de { $pairs } positions. Vérifiez que les colonnes sont lues correctement, puis mesurez.
        }
    }
traces-measure-all = Tout mesurer
traces-forget = Abandonner ces fichiers
traces-again = Mesurer de nouveau
traces-again-hint = À utiliser après avoir changé le seuil ou la fraction.
traces-progress = Avancement de la mesure
traces-done = Positions : { $done } sur { $all }
traces-done-again = { $done } sur { $all } de nouveau, avec le seuil commun
traces-measured =
    { $n ->
        [one] { $n } position a été mesurée.
       *[other] { $n } positions ont été mesurées.
    }
traces-unchanged = Mesuré ; rien n’a changé.
traces-stopped =
    { $n ->
        [one] Arrêté. { $n } position a été mesurée et ajoutée aux lectures. Elle utilise son propre seuil jusqu’à ce que toutes soient mesurées de nouveau.
       *[other] Arrêté. { $n } positions ont été mesurées et ajoutées aux lectures. Chacune utilise son propre seuil jusqu’à ce que toutes soient mesurées de nouveau.
    }
traces-undo = « Annuler » les retire toutes d’un coup.
traces-refused-title = Non ajoutés :
traces-more = et { $n } de plus.
traces-of-file = { $name } : { $why }
traces-other = { $name } : ce n’est pas un fichier de traces mais une photo, une vidéo ou un cahier ; il n’a pas été ajouté.
traces-bad-wish = Rien n’a été mesuré : corrigez d’abord le seuil ou la fraction.
traces-needed = Ligne { $row } : { $name } n’est pas conservé dans ce navigateur. Ajoutez de nouveau le fichier pour le mesurer encore ; jusque-là, la ligne garde son retard.
traces-not-kept = { $name } : mesuré, mais le fichier n’est pas conservé dans ce navigateur ({ $why }). Pour le voir ou le mesurer encore, ajoutez-le de nouveau.
traces-many-too-large = { $n } fichiers dépassent 8 Mo : mesurés, mais non conservés dans ce navigateur. Pour les voir ou les mesurer encore, ajoutez-les de nouveau.
traces-too-large-to-keep = il dépasse 8 Mo
traces-layout-of = Tel que lu dans { $name }. Les corrections valent pour tous les fichiers.
traces-layout-delimiter = Séparateur de colonnes
traces-layout-delimiters-tab = tabulations
traces-layout-delimiters-semicolon = points-virgules
traces-layout-delimiters-comma = virgules
traces-layout-delimiters-bar = barres verticales
traces-layout-delimiters-space = espaces
traces-layout-decimal = Séparateur décimal
traces-layout-decimals-point = point
traces-layout-decimals-comma = virgule
traces-layout-first-line = Première ligne d’échantillons
traces-layout-step = Intervalle d’échantillonnage / ns
traces-layout-table = Colonnes et premiers échantillons
traces-layout-column = Colonne
traces-layout-holds = Contient
traces-layout-unit = Unité
traces-layout-line = Ligne { $n }
traces-layout-roles-time = temps
traces-layout-roles-channel_a = trace A
traces-layout-roles-channel_b = trace B
traces-layout-roles-ignored = ignorer
traces-layout-unit-none = aucune
traces-layout-role-of = Contenu de la colonne { $name }
traces-layout-unit-of = Unité de la colonne { $name }
traces-layout-supposed = { $unit }, supposée
traces-layout-view = Les deux traces, telles que ces choix les lisent
traces-layout-settings = Autres indications du fichier
traces-estimator = Datation des fronts
traces-estimators-constant_fraction = fraction constante : chaque front à la même fraction de sa propre amplitude
traces-estimators-fixed_level = seuil fixe : les deux fronts à la même tension ; sujet au glissement du front (time walk) : une impulsion plus petite le franchit plus tard
traces-estimators-edge_line = droite de 10 % à 90 % de chaque front, prolongée jusqu’à sa ligne de base
traces-estimators-cross_correlation = intercorrélation : le décalage pour lequel les fronts se ressemblent le plus
traces-estimators-shift_and_scale = décalage et échelle d’un front par rapport à l’autre, par moindres carrés
traces-choose = Traces de
traces-option = ligne { $n } : { $name }
traces-view = Les deux traces de la ligne
traces-view-keys = Les deux traces ; plus et moins changent l’échelle, les flèches déplacent, 0 montre toute l’impulsion
traces-zoom-in = Agrandir
traces-zoom-out = Réduire
traces-earlier = Plus tôt
traces-later = Plus tard
traces-reset = Toute l’impulsion
traces-loading = Lecture des traces…
traces-missing = { $name } n’est pas conservé dans ce navigateur, les traces ne peuvent pas être montrées. Le retard mesuré reste valable. Ajoutez de nouveau le fichier pour le voir.
traces-take-off = Retirer les traces de cette ligne
traces-taken-off = Les traces ont été retirées de la ligne { $n }.
traces-walk = Différence seuil fixe − fraction constante, en fonction de la distance
traces-walk-summary = Différence seuil fixe − fraction constante à { $n } positions ; elle croît de { $slope } ns par mètre.

## Observations sur un retard mesuré sur des traces

remarks-level-pair = Seuil : { $volts } V au-dessus des lignes de base, la moitié de la plus petite des deux impulsions.
remarks-level-run = Seuil : { $volts } V au-dessus des lignes de base, la moitié de la plus petite impulsion de la série.
remarks-level-stated = Seuil : { $volts } V au-dessus des lignes de base, tel que déclaré.
remarks-fraction = Fraction : { $percent } %.
remarks-inverted = Trace { $trace } : l’impulsion est négative et a été inversée.
remarks-noisy = Trace { $trace } : l’amplitude est inférieure à 5 fois le bruit.
remarks-double_edge = Trace { $trace } : un second front se trouve près de l’échantillon { $sample }.
remarks-unlike_edge = Trace { $trace } : son front n’a pas la forme de celui de l’autre trace : entre 20 % et 80 % des amplitudes, le retard diffère de { $time } ns.
remarks-not_quiet = Trace { $trace } : un signal avant l’impulsion perturbe la ligne de base à l’échantillon { $sample }.
remarks-drift = Trace { $trace } : la ligne de base dérive de { $volts } V avant l’impulsion.
remarks-correlated_noise = Trace { $trace } : le bruit est corrélé sur { $n ->
        [one] { $n } échantillon
       *[other] { $n } échantillons
    } ; l’incertitude en tient compte.
remarks-few_on_edge = Trace { $trace } : seulement { $n ->
        [one] { $n } échantillon environ se trouve
       *[other] { $n } échantillons environ se trouvent
    } sur le front ; un échantillonnage plus rapide aiderait.
remarks-flat_top = Trace { $trace } : le sommet est à { $volts } V partout. Si c’est la plus grande valeur que l’appareil peut enregistrer, l’impulsion est écrêtée et son front est lu trop tôt.
remarks-uneven_steps = Trace { $trace } : les échantillons ont été pris à des pas inégaux, qui s’écartent du pas moyen jusqu’à { $percent } %. Ils ont été ramenés à des pas égaux d’après leurs instants ; l’incertitude en tient compte.
remarks-supposed_unit = Trace { $trace } : le fichier ne dit pas en quelle unité sont ses temps ; elle a été supposée.
remarks-rough = Trace { $trace } : l’incertitude dépasse un dixième du temps de montée ; elle n’est donc elle-même que grossièrement connue.

## Fichiers

files-other-notebook = Un autre cahier a été ouvert entre-temps : rien n’y a été ajouté. Ajoutez de nouveau les fichiers dans le cahier voulu.
only-here = Ce navigateur ne garde pas les fichiers, peut-être parce que la fenêtre est privée : photos et traces durent jusqu’à la fermeture de la page. Téléchargez avant cela l’archive (.zip), qui les contient.

## Les annotations entre les lignes

notes-title = Annotation
notes-add = Ajouter une annotation
notes-hint = Ce qui s’est passé au banc : un câble déplacé, la lampe changée, une porte ouverte. L’annotation est conservée avec sa date et son heure, se place entre les lignes et figure dans le rapport.
notes-text = Texte de l’annotation
notes-after = Place
notes-first = avant la première ligne
notes-behind = après la ligne { $n }
notes-write = Enregistrer l’annotation
notes-remove = Retirer l’annotation
notes-cancel = Annuler
notes-change = Modifier
notes-change-of = Modifier l’annotation : { $at }
notes-needed = Écrivez d’abord quelque chose.
notes-removed = L’annotation a été retirée.
notes-other-notebook = Un autre cahier a été ouvert entre-temps, et cette annotation n’a pas été enregistrée. Copiez son texte et écrivez-la dans le cahier voulu.

## Écarter une ligne

strike-hint = La ligne reste visible et peut être réintégrée. La raison est inscrite dans le cahier et le rapport.
strike-reason = Raison
strike-needed = Donnez d’abord la raison.
strike-cancel = Ne pas écarter

## Droite

line-title = Droite
charts-nothing = Dès qu’une ligne du tableau est complète et n’est pas écartée, le retard en fonction de la distance est tracé ici, avec les résidus au-dessous.
line-plot = Retard en fonction de la distance
line-residuals = Résidus
line-figures = La droite
line-checks = Contrôles
line-checks-hint = D’autres tests des mêmes lignes. Aucun ne change le résultat.
line-method = { $how } Le retard à distance nulle, t₀, est ajusté et jamais pris égal à zéro.
line-method-ordinary = Moindres carrés ordinaires : aucune incertitude n’est déclarée, les incertitudes viennent donc de la dispersion (JCGM 100:2008, H.3).
line-method-weighted = Moindres carrés pondérés avec les incertitudes déclarées des retards (ISO/TS 28037:2010, article 6).
line-method-distances = Moindres carrés avec les incertitudes déclarées des distances (ISO/TS 28037:2010, article 7).
line-method-both = Moindres carrés avec les incertitudes déclarées de la distance et du retard (ISO/TS 28037:2010, article 7).
line-method-shared = Moindres carrés avec les incertitudes déclarées. Les composantes communes à plusieurs lignes (raccords, échelles, bases de temps) et les covariances déclarées sont dans la matrice de covariance (ISO/TS 28037:2010, articles 8 à 10).
line-summary = { $n } lignes ; distance de { $near } à { $far } m, retard de { $least } à { $most } ns. { $course } À distance nulle, le retard vaut { $intercept } ns.
line-rises = La droite monte de { $slope } ns par mètre.
line-falls = La droite descend de { $slope } ns par mètre.
line-no-residuals = Il n’y a pas de résidus : la droite passe par toutes les lignes.
line-residual-summary = Résidus normalisés entre −2 et 2 : { $within } sur { $n } ; le plus grand est { $largest }, celui de la ligne { $row }.

## Graphiques

chart-distance = distance d
chart-delay = retard Δt
chart-walk = seuil fixe − fraction constante
chart-walk-series = glissement du front
chart-residual = résidu normalisé
chart-bench-distance = distance à la lame séparatrice d
chart-speed = vitesse de la lumière c
chart-density = densité de probabilité
chart-time = temps
chart-voltage = tension
chart-no-samples = Aucun échantillon des deux traces n’est dans cet intervalle.
chart-no-readings = Aucune ligne n’a encore à la fois une distance et un retard.
chart-no-residuals = Pas encore de résidus : ils viennent avec la droite ajustée.
chart-no-rails = Aucun rail n’a encore de position : déclarez celle du premier.
chart-no-budget = Pas encore de bilan : il vient avec le résultat.
chart-no-trials = Pas encore d’essais, ou tous avec le même résultat.
chart-threshold = niveau du franchissement
chart-trials = essais
chart-budget-curve = loi d’après le bilan
chart-ends = bornes de l’intervalle des essais
chart-line = droite ajustée
chart-line-in-band = droite, bande à 95 %
chart-bars = barres : ± 1 u
chart-two = ± 2
chart-carriage = position du chariot
chart-grows = lectures croissantes
chart-splice = raccord
chart-splitter = lame séparatrice
chart-start = détecteur A
chart-source = source
chart-typed = saisie directe
chart-step-fitted = saut ajusté
chart-row-beyond = ligne { $n }, au-delà { $arrow }
chart-unplaced = position encore inconnue : { $names }
chart-rail = { $name } : { $note }
chart-from = de
chart-to = à
chart-ruler-from = règle, de
chart-ruler-to = règle, à
chart-carriages = positions du chariot
chart-trace = trace
chart-baseline = ligne de base
chart-top = sommet
chart-crossing = franchissement
chart-traces-span = Les deux traces de { $from } à { $to } ns.
chart-trace-none = La trace { $trace } ne montre pas d’impulsion.
chart-trace-levels = Trace { $trace } : ligne de base à { $baseline } V, sommet à { $top } V.
chart-trace-edge = Trace { $trace } : ligne de base à { $baseline } V, sommet à { $top } V ; le front franchit { $level } V à { $time }.

## Incertitude

uncertainty-title = Incertitude
fields-coverage = Probabilité de couverture

## Bilan

budget-caption = Bilan d’incertitude, la plus grande composante d’abord
budget-hint = Déplacez un curseur pour voir l’incertitude si cette composante était plus petite ou plus grande. Rien n’est changé dans le cahier.
budget-columns-name = Composante
budget-columns-acts_on = Agit sur
budget-columns-u = u
budget-columns-shape = Loi de probabilité
budget-columns-degrees_of_freedom = ν
budget-columns-sensitivity = Coefficient de sensibilité |⁠∂c/⁠∂x⁠|
budget-columns-contribution = Contribution à u(c)
budget-columns-share = Part de u²(c)
budget-columns-what_if = Et si
budget-what-if-of = Et si : { $name }
budget-answer = Avec cette composante { $factor } : { $changes }.
budget-answer-none = Avec cette composante { $factor }, aucune valeur ne change.
budget-change = { $symbol } = { $value } au lieu de { $now }
budget-reset = Revenir à × 1
budget-rail = rail { $name }
budget-removed-rail = un rail supprimé
budget-names-splitter = position de la graduation à la lame séparatrice, { $rail }
budget-names-splice = raccord, { $rail }
budget-names-scale = échelle de la règle, { $rail }
budget-names-recorder = base de temps de l’enregistreur
budget-names-time_base = base de temps à { $time } par division
budget-names-grid = coins de la grille sur les photos
budget-names-unnamed = composante sans nom
budget-names-rulers = lectures de la règle
budget-names-distances = distances saisies
budget-names-screen = lectures des fronts sur l’écran
budget-names-repeats = dispersion des lectures répétées
budget-names-marks = marques des fronts sur les photos
budget-names-traces = bruit des traces
budget-names-walk = glissement du front au seuil fixe
budget-names-delays = retards saisis
budget-names-matrices = matrices de covariance déclarées
budget-names-scatter = dispersion autour de la droite
budget-names-beam = angle du faisceau
budget-names-air = indice de réfraction de l’air
budget-names-skew = décalage entre les voies
budget-acts-beyond = distances, { $rail } et au-delà
budget-acts-rail = distances, { $rail }
budget-acts-setting = retards avec ce réglage
budget-acts-removed = rien : elle a été supprimée
budget-acts-each_distance = chaque distance
budget-acts-each_delay = chaque retard
budget-acts-walk = retards tirés des traces, en proportion de la distance
budget-acts-grid = retards lus sur cette grille
budget-acts-both = distances et retards
budget-acts-slope = la pente
budget-acts-all_distances = toutes les distances
budget-acts-c = c seulement
budget-acts-all_delays = tous les retards
budget-acts-stated = { $acts }, { $rows } : { $effect }
budget-rows-rail = lignes, { $rail }
budget-rows-chosen =
    { $n ->
        [one] { $n } ligne
       *[other] { $n } lignes
    }
budget-remarks-no_deviation = Avec deux degrés de liberté ou moins, cette composante n’a pas d’écart-type fini : c’est l’échelle de sa loi qui est montrée. Indiquez l’intervalle du contrôle par Monte Carlo.
budget-remarks-skew = Elle décale tous les retards d’autant : seul t₀ change, non la pente.
budget-remarks-shift = Elle décale d’autant toutes les distances ou tous les retards de la droite : seul t₀ change, non la pente.
budget-remarks-no_angle = Aucun angle n’est déclaré.
budget-remarks-angle = Avec un angle θ, le trajet de la lumière est plus court (faisceau large) ou plus long (faisceau fin que l’on suit) que la distance lue, de la fraction θ²/2. La moitié du plus grand effet possible est corrigée ; le reste est pris comme rectangulaire.
budget-remarks-air = L’air déclaré est trop près de la limite du domaine des équations : son incertitude ne peut pas être donnée.
budget-remarks-walk = Une impulsion plus petite franchit plus tard un seuil fixe, et rien ne le corrige : la pente de l’écart à la fraction constante, avec sa propre incertitude, est prise comme incertitude-type (Phillips, Eberhardt et Parry 1997). Avec la fraction constante, cette composante disparaît.
budget-remarks-shared = Partie de la matrice de covariance de l’ajustement, commune à ses lignes : davantage de lignes ne la réduisent pas.
budget-remarks-scatter = Tirée des résidus et non d’incertitudes déclarées des lignes.
budget-remarks-matrices = Partie de la matrice de covariance de l’ajustement, comme elle est déclarée.
budget-remarks-rows = Partie de la matrice de covariance de l’ajustement, indépendante pour chaque ligne : davantage de lignes la réduisent.
budget-remarks-beside = Hors de l’ajustement ; ajoutée au bilan.
budget-summary = Plus grande composante : { $name } ({ $share } de la variance). Incertitude-type composée : u(c) = { $u } m/s, { $percent } % de c.
budget-summary-bare = Incertitude-type composée : u(c) = { $u } m/s, { $percent } % de c.

## Contrôle par Monte Carlo

trials-title = Contrôle par Monte Carlo
trials-hint = Un contrôle du bilan : chaque grandeur d’entrée est tirée au hasard selon sa loi, un grand nombre de fois, et toute l’analyse est faite pour chaque essai. La même graine donne les mêmes chiffres dans tous les navigateurs.
trials-wanted = Nombre d’essais
trials-seed = Graine
trials-new-seed = Nouvelle graine
trials-start = Lancer le contrôle
trials-progress = Avancement du contrôle
trials-running = En cours…
trials-done = Terminé.
trials-stopped = Arrêté. Résultats jusqu’ici :
trials-changed = Arrêté, parce que le cahier a changé.
trials-stale = Le cahier a changé depuis ce contrôle : les résultats ci-dessous valent pour la version précédente.
trials-failed = Le contrôle n’a pas pu être fait : { $why }
trials-unsaid = le navigateur a bloqué le calcul en arrière-plan.
trials-here = Le faire dans la page même (plus lent)
trials-plot = Résultats des essais
trials-default = autant qu’il en faut pour des résultats stables, au plus { $most }
trials-drawn = { $done } essais sur { $most } au plus
trials-interval = { $low } à { $high } m/s
trials-verdict-none = Le bilan ne donne pas d’intervalle à comparer aux essais. { $why }
trials-verdict-holds = L’intervalle du bilan est validé : { $apart }. Il peut être indiqué.
trials-verdict-fails = L’intervalle du bilan n’est pas validé : { $apart }. Indiquez l’intervalle des essais.
trials-verdict-undecided = Les essais sont trop peu nombreux pour juger l’intervalle du bilan : { $apart }, et chaque borne de l’intervalle des essais n’est connue qu’à { $u } m/s près. Faites davantage d’essais.
trials-apart = ses bornes diffèrent de { $low } et { $high } m/s de celles des essais, et { $tolerance } m/s sont permis (JCGM 101:2008, 8.1)
trials-curve-normal = loi normale
trials-curve-student = loi de Student, ν = { $nu }
trials-summary = Histogramme de { $trials } essais autour de { $mean } ; par-dessus, la { $curve } du bilan autour de { $c }.

## Ce que la page refuse des fichiers

evidence-unsaid = le navigateur ne donne pas de raison
evidence-refusals-too_large = { $what } : ce fichier dépasse 64 Mo. Enregistrez la trace avec moins d’échantillons autour de l’impulsion, ou la photo en plus petit.
evidence-refusals-too_many = { $what } fichiers, c’est plus que la limite de 2000 à la fois. Ajoutez-les en plusieurs fois, par exemple un dossier par rail.
evidence-refusals-file = { $what } : le fichier n’est plus lisible. Il a peut-être été déplacé, modifié ou supprimé ; choisissez-le de nouveau.
evidence-refusals-decode = { $what } : cette photo ne peut pas être lue jusqu’à sa fin. Elle est peut-être coupée ou abîmée ; copiez-la de nouveau depuis l’appareil, ou ouvrez-la et enregistrez-la de nouveau.
evidence-refusals-no_canvas = Ce navigateur ne peut pas traiter de photos en arrière-plan. Utilisez-en un plus récent.
evidence-refusals-start = La lecture des traces et des photos n’a pas pu démarrer ({ $what }). Vérifiez la connexion et réessayez.
evidence-refusals-crash = La lecture des traces ou des photos a échoué ({ $what }). Le cahier est inchangé. Réessayez, ou utilisez un fichier plus petit.
evidence-refusals-stopped = Arrêté.
evidence-refusals-nothing_kept = Les traces ne sont plus chargées. Ouvrez de nouveau les fichiers.

## Résultat

result-title = Résultat
result-in-figures = En chiffres
result-sentences = En phrases
result-copy = Copier
result-copied = Copié.
result-not-copied = Le navigateur n’a pas permis la copie. Sélectionnez le texte et copiez-le à la main.
result-choice = Quelle incertitude indiquez-vous ?
result-bases-stated = d’après les incertitudes déclarées des grandeurs d’entrée
result-bases-scatter = d’après la dispersion des résidus (les composantes communes restent telles que déclarées ; les limites de lecture aussi, si la dispersion est plus faible)
result-reason = Raison
result-from-stated = La vitesse de la lumière dans le vide, d’après { $n } lignes, est c = { $c }, avec l’incertitude-type, entre parenthèses, qui résulte des incertitudes déclarées des grandeurs d’entrée.
result-from-scatter = La vitesse de la lumière dans le vide, d’après { $n } lignes, est c = { $c }, avec l’incertitude-type, entre parenthèses, qui résulte de la dispersion autour de la droite.
result-from-both = La vitesse de la lumière dans le vide, d’après { $n } lignes, est c = { $c }, avec l’incertitude-type, entre parenthèses, qui résulte de la dispersion autour de la droite et des composantes déclarées qu’elle ne remplace pas.
result-from-limits = La vitesse de la lumière dans le vide, d’après { $n } lignes, est c = { $c }, avec l’incertitude-type, entre parenthèses, d’après les incertitudes déclarées des grandeurs d’entrée : la dispersion est plus petite et ne remplace aucune limite de lecture.
result-expanded = Avec l’incertitude élargie U après ±, c = { $c } (facteur d’élargissement k = { $k }, probabilité de couverture { $p }).
result-no-expanded = Aucune incertitude élargie ne peut être donnée.
result-below = Le résultat est inférieur de { $apart } u à la valeur définie, 299 792 458 m/s.
result-above = Le résultat est supérieur de { $apart } u à la valeur définie, 299 792 458 m/s.
result-within = L’écart est inférieur à l’incertitude élargie.
result-outside = L’écart dépasse l’incertitude élargie. Un effet manque peut-être au bilan ; voyez les remarques et les contrôles.
result-sealed = Le résultat est scellé : v et c sont modifiées par un facteur caché, de 8 % au plus, jusqu’à l’ouverture du sceau.
result-choice-more = Les lignes se dispersent plus que ne le permettent leurs incertitudes déclarées. D’après les incertitudes déclarées u(c) = { $stated } m/s ; d’après la dispersion u(c) = { $scatter } m/s. Laquelle indiquez-vous, et pourquoi ?
result-choice-less = Les lignes se dispersent moins que ne le laissent attendre leurs incertitudes déclarées. D’après les incertitudes déclarées u(c) = { $stated } m/s ; d’après la dispersion, qui ne réduit aucune limite de lecture, u(c) = { $scatter } m/s. Laquelle indiquez-vous, et pourquoi ?
result-choice-same = D’après les incertitudes déclarées u(c) = { $stated } m/s. La dispersion est plus petite, mais elle ne peut pas remplacer les limites de lecture déclarées pour les lignes : d’après la dispersion, u(c) est donc la même.
result-choice-fits = La dispersion s’accorde avec les incertitudes déclarées : d’après celles-ci u(c) = { $stated } m/s, d’après la dispersion u(c) = { $scatter } m/s.

## Sceau

seal-mark = scellé
seal-title = Sceller le résultat
seal-hint = Tant que le sceau est fermé, toute valeur affichée de v et de c est modifiée par un facteur caché, de 8 % au plus. La pente et le retard à distance nulle sont cachés de même. Ainsi la valeur connue ne peut pas influencer le choix des lignes ni ce qui est déclaré. Un cahier ne peut être scellé qu’une fois.
seal-put = Sceller maintenant
seal-open = Ouvrir le sceau…
seal-open-title = Ouvrir le sceau ?
seal-open-hint = Les valeurs de v et de c seront alors montrées sans le facteur caché. Cela ne peut pas être annulé et s’inscrit dans l’historique.
seal-open-sure = Ouvrir définitivement
seal-keep = Le laisser fermé

## Rapport

report-not-in-bundle =
    { $n ->
        [one] Une photo n’est pas conservée dans ce navigateur : l’archive ne contient que ses marques.
       *[other] { $n } photos ne sont pas conservées dans ce navigateur : l’archive ne contient que leurs marques.
    }
report-not-kept = { $name } : le navigateur n’a pas pu conserver le fichier ({ $why }). Réessayez.
report-title = Rapport
fields-people = Noms
fields-student_number = Numéro d’étudiant
fields-group = Groupe
fields-date = Date
fields-least_rows = Nombre minimal de lignes retenues
fields-place = Lieu
fields-aim = But
fields-method = Méthode
fields-discussion = Discussion
report-take = Exporter
report-open = Ouvrir le rapport
report-open-hint = Dans un nouvel onglet, pour lire, imprimer ou enregistrer en PDF.
report-language = Langue du rapport
sheets-title = À l’impression
sheets-hint =
    { $n ->
        [one] { $n } page A4. Pour la lire, ouvrez le rapport.
       *[other] { $n } pages A4 côte à côte. Pour les lire, ouvrez le rapport.
    }
sheets-print = Imprimer le rapport
report-blocked = Le navigateur n’a pas permis un nouvel onglet. Le rapport est proposé sous forme de fichier.
report-latex = Télécharger le rapport en LaTeX
report-markdown = Télécharger le rapport en Markdown (.zip)
report-forms-hint = Pour continuer la rédaction : LaTeX en un seul fichier, Markdown avec ses graphiques à côté.
report-bundle = Télécharger l’archive (.zip)
report-bundle-hint = Tout le cahier avec tableaux, graphiques et rapport. Elle peut être rouverte ici.
report-tables = Tableau des lectures
report-format = Format
report-formats-csv = CSV
report-formats-latex = LaTeX
report-formats-markdown = Tableau à barres verticales
report-copy-table = Copier le tableau
report-take-table = Télécharger le tableau
report-plots = Graphiques
report-plot = Graphique
report-plot-format = Type de fichier
report-take-plot = Télécharger le graphique
report-take-plot-as = Télécharger le graphique ({ $format })
report-no-plot = Il n’y a encore rien à tracer : saisissez d’abord des lectures.
report-no-trials = Aucun essai n’a été fait du cahier tel qu’il est. Lancez d’abord le contrôle, sous Incertitude.
report-no-traces = Aucune trace n’est affichée. Montrez d’abord les traces d’une ligne, sous Lectures.
report-no-walk = Il n’y a pas de glissement du front à tracer : il faut des lignes avec des traces.
report-drop = Déposez ici : les fichiers de cahier sont ouverts ; les photos et les traces sont ajoutées aux lignes.
report-opened = « { $title } » est ouvert.
report-not-opened = { $name } n’a pas été ouvert : { $why }

## Le rapport imprimé

report-notices = Remarques
report-no-notices = Aucune remarque.
report-history = Historique
report-entries =
    { $n ->
        [one] L’historique de ce cahier compte { $n } entrée, conservée dans notebook.json.
       *[other] L’historique de ce cahier compte { $n } entrées, conservées dans notebook.json.
    }
report-times = Entrées du { $first } au { $last } (UTC).
report-version = Rapport produit avec Slope of Light, version { $version }.
report-digest = Empreinte de tout l’historique (SHA-256) : { $digest }. Toute modification ultérieure de l’historique en donne une autre.
report-default = { $text } (par défaut)
report-limit = limite ±{ $a }, u = { $u }
report-limit-alone = limite ±{ $a }
report-standard = u = { $u }
report-value-limit = { $value }, limite par défaut ±{ $a }, u = { $u }
report-value-standard = { $value }, u = { $u }
report-exact = { $u }, valeur traitée comme exacte
report-unusable = { $text } (inutilisable)
report-not-given = (non déclaré)
report-setting = Base de temps à { $base } par division
report-setting-uncertainty = { $u } (relative)
report-shared = { $acts } : { $effect }, { $u }
report-rail = Rail { $name }
report-ruler = Règle
report-ruler-text = en { $unit } ; les lectures { $sense } vers l’extérieur
report-splice = Position, telle que déclarée
report-splices-at_splitter = la graduation { $mark } est à la lame séparatrice
report-splices-at_distance = la graduation { $mark } est à { $distance } de la lame séparatrice
report-splices-joined = la graduation { $mark } est en regard de la graduation { $before } du rail précédent, avec un écart de { $gap }
report-splices-overlap = positions lues sur les deux règles : { $pairs }
report-splices-pair = { $here } où le rail précédent indique { $before }
report-splices-no-pairs = positions lues sur les deux règles : encore aucune
report-splices-free = le saut à la graduation { $mark } est ajusté avec la droite
report-stands = Position calculée
report-step = Saut entre ce rail et les autres
report-step-none = { $step }, non significativement différent de zéro ({ $p })
report-step-found = { $step }, significativement différent de zéro ({ $p })
report-photo = { $name }, dans l’archive sous pictures/{ $file }….jpg
report-note = Le { $date } à { $time } UTC : { $text }
report-delays-typed =
    { $n ->
        [one] Ligne { $rows } : le retard a été saisi.
       *[other] Lignes { $rows } : les retards ont été saisis.
    }
report-delays-screen =
    { $n ->
        [one] Ligne { $rows } : le retard vaut (front B − front A) × temps par division, les deux fronts ayant été lus à l’écran.
       *[other] Lignes { $rows } : chaque retard vaut (front B − front A) × temps par division, les deux fronts ayant été lus à l’écran.
    }
report-delays-photos =
    { $n ->
        [one] Ligne { $rows } : les deux fronts ont été marqués sur une photo de l’écran.
       *[other] Lignes { $rows } : les deux fronts ont été marqués sur des photos de l’écran.
    }
report-delays-heights =
    { $n ->
        [one] Sur la ligne { $rows }, la ligne de base et le sommet ont été marqués aussi, là où ils sont à l’écran : chaque front est daté à { $percent } % de sa propre hauteur.
       *[other] Sur les lignes { $rows }, la ligne de base et le sommet ont été marqués aussi, là où ils sont à l’écran : chaque front est daté à { $percent } % de sa propre hauteur.
    }
report-delays-traces =
    { $n ->
        [one] Ligne { $rows } : les fronts ont été datés sur des traces enregistrées ({ $how }).
       *[other] Lignes { $rows } : les fronts ont été datés sur des traces enregistrées ({ $how }).
    }
report-shares = Parts de la variance de c, à partir de 1 %
report-reason = Raison donnée
report-notice-rows =
    { $n ->
        [one] Ligne { $rows }.
       *[other] Lignes { $rows }.
    }

## Tableaux : titres, colonnes, grandeurs de la droite

columns-row = ligne
columns-row-meaning = Numéro de la ligne dans le cahier, à partir de 1.
columns-figures-name = grandeur
columns-figures-symbol = symbole
columns-figures-value = valeur
columns-figures-meaning = signification
columns-figures-source = méthode ou source
columns-budget-component = composante
columns-budget-component-meaning = D’où vient cette incertitude.
columns-budget-acts_on = agit sur
columns-budget-acts_on-meaning = Les distances ou les retards qu’elle déplace.
columns-budget-u = u
columns-budget-u-meaning = Son incertitude-type, dans l’unité de la colonne suivante.
columns-budget-unit = unité
columns-budget-unit-meaning = Unité de l’incertitude-type ; aucune pour un rapport.
columns-budget-shape = loi de probabilité
columns-budget-shape-meaning = Comment elle est distribuée.
columns-budget-degrees_of_freedom = ν
columns-budget-degrees_of_freedom-meaning = Ses degrés de liberté ; INF pour une infinité.
columns-budget-sensitivity = coefficient de sensibilité |∂c/∂x|
columns-budget-sensitivity-meaning = Variation de c, en m/s, pour une unité de cette composante.
columns-budget-contribution = contribution à u(c)
columns-budget-contribution-meaning = L’incertitude-type de c qu’elle cause.
columns-budget-share = part de u²(c)
columns-budget-share-meaning = Sa part de la variance de c, de 0 à 1.
columns-budget-note = note
columns-budget-remark = observation
columns-budget-remark-meaning = Comment elle est entrée dans le bilan, ou pourquoi elle ne peut pas compter.
columns-readings-rail = rail
columns-readings-rail-meaning = Nom du rail sur lequel la position a été lue.
columns-readings-reading = lecture
columns-readings-reading-meaning = Lecture de la règle telle que saisie ; un nombre sans unité est dans l’unité de la règle.
columns-readings-ruler_unit = unité de la règle
columns-readings-ruler_unit-meaning = Unité de la règle de ce rail.
columns-readings-time_per_division = temps par division
columns-readings-time_per_division-meaning = Temps par division de l’écran, en nanosecondes.
columns-readings-edge_a = front A
columns-readings-edge_a-meaning = Front A sur l’écran, tel que saisi ; les lectures répétées sont séparées par des points-virgules.
columns-readings-edge_b = front B
columns-readings-edge_b-meaning = Front B sur l’écran, tel que saisi ; les lectures répétées sont séparées par des points-virgules.
columns-readings-distance_m = distance
columns-readings-delay_ns = retard
columns-readings-normalized_residual = résidu normalisé
columns-readings-state = état
columns-readings-state-meaning = Si la ligne est retenue, écartée ou incomplète.
columns-readings-outside_because = pourquoi non retenue
columns-readings-outside_because-meaning = Pourquoi la ligne est écartée, ou ce qui lui manque.
columns-readings-remark = observation
columns-readings-remark-meaning = Observation telle que saisie.
tables-line = La droite
tables-checks = Contrôles
tables-budget = Bilan d’incertitude de c
columns-residuals-distance_m = distance
columns-residuals-distance_m-meaning = Distance du chariot à la lame séparatrice le long des rails.
columns-residuals-u_distance_m = incertitude-type de la distance
columns-residuals-u_distance_m-meaning = Incertitude-type de cette distance, parts communes avec d’autres lignes comprises.
columns-residuals-delay_ns = retard
columns-residuals-delay_ns-meaning = Retard du front B sur le front A.
columns-residuals-u_delay_ns = incertitude-type du retard
columns-residuals-u_delay_ns-meaning = Incertitude-type de ce retard, parts communes avec d’autres lignes comprises.
columns-residuals-residual_ns = résidu
columns-residuals-residual_ns-meaning = Retard moins le retard de la droite à cette distance. Vide tant que le résultat est scellé : il donnerait la pente.
columns-residuals-normalized_residual = résidu normalisé
columns-residuals-normalized_residual-meaning = Résidu divisé par son incertitude-type. Quand les distances sont incertaines aussi, ou que des lignes ont des composantes communes, c’est ce qui en reste après leur ajustement (le w de Baarda).
columns-line-figure = identifiant
columns-line-figure-meaning = Identifiant de la grandeur, le même dans tous les cahiers.
columns-line-name = nom
columns-line-name-meaning = Nom de la grandeur en mots.
columns-line-value = valeur
columns-line-value-meaning = Sa valeur, dans l’unité que donne la dernière colonne.
columns-line-standard_uncertainty = incertitude-type
columns-line-standard_uncertainty-meaning = Son incertitude-type, dans la même unité ; vide si elle n’en a pas.
columns-line-unit = unité
columns-line-unit-meaning = Unité de la valeur et de l’incertitude ; vide pour un nombre pur.
tables-residuals = Lignes de la droite et leurs résidus
tables-fit = La droite : retard = ordonnée à l’origine + pente × distance
figures-slope = pente
figures-intercept = retard à distance nulle
figures-covariance = covariance de l’ordonnée à l’origine et de la pente
figures-degrees_of_freedom = degrés de liberté
figures-chi_square = khi-deux
figures-p_value = valeur p de χ²
figures-weights_degrees = degrés de liberté des incertitudes déclarées, pondérés comme dans χ²
figures-birge_ratio = rapport de Birge
figures-squares = somme des carrés des résidus
figures-scatter = écart-type des retards autour de la droite
figures-v = vitesse de groupe dans l’air
figures-group_index = indice de groupe de l’air
figures-c = vitesse de la lumière dans le vide
figures-coverage = probabilité de couverture
figures-coverage_factor = facteur d’élargissement
figures-expanded = incertitude élargie de c
figures-z = écart à c₀ en incertitudes-types
figures-e_n = écart à c₀ en incertitudes élargies
figures-relative_difference = écart relatif à c₀

## Grandeurs : ce que chacune signifie, et où elle est définie

figures-none = aucun
figures-line-source = Moindres carrés : ISO/TS 28037:2010
figures-slope-meaning = Le retard croît d’autant par mètre. La vitesse est le facteur de trajet divisé par la pente. Un facteur d’échelle commun à toutes les distances ou à tous les retards la change de la même fraction.
figures-intercept-meaning = Vient de trajets, câbles et détecteurs inégaux. Un décalage commun à toutes les distances ou à tous les retards change cette valeur, non la pente.
figures-covariance-value = { $covariance } ns²/m (corrélation { $r })
figures-covariance-opposite = Les estimations sont corrélées : si l’une est trop grande, l’autre tend à être trop petite.
figures-covariance-alike = Les estimations sont corrélées : si l’une est trop grande, l’autre tend à l’être aussi.
figures-degrees_of_freedom-meaning = Lignes de la droite moins inconnues ajustées.
figures-chi_square-meaning = Somme des carrés des résidus r, relativement à leurs incertitudes déclarées (matrice de covariance V). Environ égale à ν si celles-ci sont bien déclarées.
figures-chi_square-source = ISO/TS 28037:2010, 10.3
figures-p_value-meaning = Probabilité d’un χ² plus grand par hasard. Au-dessous de { $low }, les lignes se dispersent plus que déclaré, au-dessus de { $high }, moins.
figures-p_value-source = ISO/TS 28037:2010, 6.3 ; queue supérieure de la loi du khi-deux à ν degrés de liberté
figures-p_value-few = Certaines incertitudes viennent de peu de répétitions et sont elles-mêmes incertaines, avec ν₂ = { $below } degrés de liberté : χ²/ν est alors comparé à la loi F, et non χ² à la loi du khi-deux, qui jugerait mauvaises trop de mesures correctes.
figures-p_value-few-source = queue supérieure de la loi F à ν et ν₂ degrés de liberté (Draper et Smith 1998, 2.1) ; ν₂ selon Satterthwaite 1946, chaque source avec sa part dans ν
figures-birge_ratio-meaning = Rapport de la dispersion aux incertitudes déclarées.
figures-scatter-meaning = Aucune incertitude n’est déclarée : cette dispersion est prise comme incertitude-type de chaque retard.
figures-through_zero = pente d’une droite forcée par zéro
figures-through_zero-meaning = Pour comparaison seulement. Elle n’est juste que si les trajets, les câbles et les détecteurs sont exactement égaux ; sinon, leur différence entre dans la vitesse.
figures-through_zero-source = Comme pour la droite, avec t₀ maintenu à zéro
figures-rail_alone = pente sur le seul rail { $rail }
figures-rail_alone-meaning = Les raccords n’agissent pas sur elle. Si les rails s’accordent entre eux mais non avec la droite entière, un raccord est faux.
figures-rail_alone-source = Comme pour la droite, avec les lignes de ce rail
figures-too_few_rows = trop peu de lignes
figures-quadratic = terme quadratique
figures-quadratic-meaning = Coefficient a₂ de d² quand un terme quadratique est ajouté ; zéro pour une droite. La valeur p est la probabilité d’un coefficient aussi grand par hasard.
figures-quadratic-source-normal = Comme pour la droite, avec un terme en d² ; p selon la loi normale centrée réduite, Z
figures-quadratic-source-few = Comme pour la droite, avec un terme en d² ; p selon la loi de Student, t, à ν₂ degrés de liberté, ceux des incertitudes déclarées
figures-quadratic-source-student = Comme pour la droite, avec un terme en d² ; p selon la loi de Student, t, avec les degrés de liberté restants
figures-theil_sen = pente médiane (Theil–Sen)
figures-theil_sen-meaning = Médiane des pentes de toutes les paires de lignes : quelques lignes fausses la changent à peine.
figures-theil_sen-left_out = Omise : de plus de { $most } lignes, les paires sont trop nombreuses.
figures-other_way = pente d’après la régression de la distance sur le retard
figures-other_way-meaning = Moindres carrés ordinaires, distance et retard échangés. Elle ne diffère des autres que si les lignes se dispersent beaucoup.
figures-other_way-source = JCGM 100:2008, H.3, distance et retard échangés
figures-decisive_row = pente sans la ligne { $row }, qui la change le plus
figures-decisive_row-meaning = Si une seule ligne décide de la pente, vérifiez cette ligne.
figures-decisive_row-source = Comme pour la droite, avec { $n ->
        [one] l’autre ligne
       *[other] les { $n } autres lignes
    }
figures-runs = test des suites sur les résidus
figures-runs-source = A. Wald et J. Wolfowitz, Ann. Math. Stat. 11 (1940) 147
figures-runs-meaning = Une suite est une succession de résidus de même signe, le long de la distance : r suites, avec n₊ résidus au-dessus et n₋ au-dessous de la droite. La valeur p est la probabilité d’aussi peu (ou d’autant) de suites par hasard.
figures-suspects = lignes qu’un critère de valeur aberrante désigne
figures-suspects-chauvenet =
    { $n ->
        [one] Chauvenet : ligne { $rows }
       *[other] Chauvenet : lignes { $rows }
    }
figures-suspects-peirce =
    { $n ->
        [one] Peirce : ligne { $rows }
       *[other] Peirce : lignes { $rows }
    }
figures-suspects-both = Chauvenet : { $n ->
        [one] ligne { $rows }
       *[other] lignes { $rows }
    } ; Peirce : { $m ->
        [one] ligne { $others }
       *[other] lignes { $others }
    }
figures-suspects-meaning = Simple avis : c’est une personne qui écarte une ligne, avec une raison. Le critère de Chauvenet désigne une ligne si, sur N lignes, on en attend moins de ½ avec un résidu r aussi grand que le sien ; s est la dispersion des lignes, quelle que soit la grandeur commune des incertitudes déclarées.
figures-suspects-source = W. Chauvenet, A Manual of Spherical and Practical Astronomy (1863) ; B. Peirce, Astron. J. 2 (1852) 161
figures-v-detector = Le facteur de trajet f est 1 : le détecteur B est sur le chariot.
figures-v-mirror = Le facteur de trajet f est 2 : un miroir sur le chariot renvoie la lumière.
figures-group_index-value = { $index } (ajoute { $percent } % à v ; u = { $u })
figures-group_index-bare = { $index } (ajoute { $percent } % à v)
figures-group_index-meaning = Une impulsion se propage à la vitesse de groupe, c divisée par l’indice de groupe. Celui-ci résulte de l’indice de phase n et de sa variation avec le nombre d’onde dans le vide σ.
figures-group_index-extrapolated = À cette longueur d’onde, la petite part de la vapeur d’eau est extrapolée.
figures-group_index-source = P. E. Ciddor, Appl. Opt. 35 (1996) 1566, dérivé
figures-c-meaning = Les chiffres entre parenthèses sont l’incertitude-type sur les derniers chiffres.
figures-c-source = Écriture et arrondi : JCGM 100:2008, 7.2.2 et 7.2.6
figures-interval = même valeur, avec son incertitude élargie
figures-coverage_factor-meaning = Pour une probabilité de couverture de { $p } : le quantile de la loi de Student pour ces degrés de liberté, ou de la loi normale si ν est ∞.
figures-expanded-meaning = Intervalle élargi c ± U pour une probabilité de couverture de { $p }.
figures-sealed = montré à l’ouverture du sceau
figures-c0-source = Brochure sur le SI, 9e édition, 2.2
figures-z-meaning = La valeur définie est c₀ = 299 792 458 m/s, exactement.
figures-no_expanded = non disponible : pas de U
figures-e_n-meaning = U est prise pour une probabilité de couverture de 95 %, quel que soit le choix fait pour le résultat. Entre −1 et 1, c diffère de la valeur définie de moins de cette U.
figures-relative_difference-meaning = Comparez-le à l’incertitude relative : seul, il ne dit rien de l’accord.
figures-second_order = terme du second ordre de 1/b
figures-second_order-meaning = 1/b n’est pas une fonction linéaire de b : son espérance est plus grande de cette fraction, ici plus d’un centième de l’incertitude.
figures-second_order-source = JCGM 100:2008, 5.1.2, note
figures-combined = incertitude-type composée de c
figures-combined-meaning = Racine de la somme des carrés des contributions : les plus grandes en décident.
figures-effective_degrees = nombre effectif de degrés de liberté
figures-effective_degrees-meaning = À quel point l’incertitude elle-même est connue ; ∞ si aucune composante n’a été estimée d’après peu de lectures.
figures-trials = nombre d’essais
figures-trials-value = { $n } (graine { $seed })
figures-trials-steady = Tirés jusqu’à ce que la moyenne, l’incertitude et les deux bornes de l’intervalle soient stables à deux chiffres de l’incertitude.
figures-trials-unsteady = C’est le plus grand nombre d’essais possible. Les valeurs ne sont pas encore stables à deux chiffres de l’incertitude.
figures-trials-asked = Autant que demandé, ou jusqu’à votre arrêt. La même graine donne les mêmes chiffres.
figures-trials-source = JCGM 101:2008, 7.9.4 ; deux écarts-types de la moyenne sur les blocs d’essais doivent être inférieurs à δ
figures-trials_mean = moyenne des essais
figures-trials_mean-meaning = Avec l’écart-type des essais comme incertitude-type.
figures-trials_mean-no_deviation = Avec deux degrés de liberté ou moins, il n’existe pas d’écart-type fini : indiquez un intervalle.
figures-trials_mean-source = JCGM 101:2008, 7.6 ; moyenne c̄ des résultats des M essais
figures-trials_symmetric = intervalle élargi à { $p }, probabilistiquement symétrique
figures-trials_symmetric-meaning = Autant d’essais sont au-dessous qu’au-dessus.
figures-trials_symmetric-source = JCGM 101:2008, 7.7.2 ; du r-ième au (r + q)-ième essai par ordre de grandeur, q = p·M
figures-trials_shortest = intervalle élargi à { $p } le plus court
figures-trials_shortest-meaning = Le plus court de tous les intervalles qui contiennent cette part des essais. Il diffère de l’intervalle symétrique si la loi est asymétrique.
figures-trials_shortest-source = JCGM 101:2008, 7.7.3 ; le plus court du r-ième au (r + q)-ième essai, pour tous les r
figures-separation = du front A au front B
figures-separation-meaning = Position du front B moins celle du front A sur l’axe des temps, après correction de la perspective par les coins de la grille. Multipliée par la base de temps, c’est le retard.
figures-separation-source = R. Hartley et A. Zisserman, Multiple View Geometry in Computer Vision (2004), chapitre 4
figures-separation_uncertainty = son incertitude-type
figures-separation_levels = Puis de la position du niveau de chaque front (u₄) : marques de la ligne de base et du sommet, épaisseur de la trace, et écart entre le niveau et la marque du front.
figures-separation_uncertainty-meaning = Vient des marques des fronts (u₁), des marques des coins de la grille (u₂ ; communes à toutes les lignes lues sur cette grille) et de la distorsion de l’objectif (u₃).
figures-traces-source = σ(t) = σ(V)/|dV/dt| au franchissement (pratique courante de la datation en physique nucléaire)
figures-fixed_level = seuil fixe
figures-fixed_level-meaning = Là où chaque front franchit la même tension au-dessus de sa ligne de base. Une impulsion plus petite la franchit plus tard : glissement du front.
figures-constant_fraction = fraction constante
figures-constant_fraction-meaning = Là où chaque front franchit la même fraction de sa propre amplitude.
figures-edge_line = droite du front
figures-edge_line-meaning = Là où la droite de 10 % à 90 % de chaque front rencontre sa ligne de base.
figures-cross_correlation = intercorrélation
figures-cross_correlation-meaning = Le décalage pour lequel les deux fronts, chacun divisé par son amplitude, se ressemblent le plus ; entre les échantillons, par une parabole.
figures-shift_and_scale = décalage et échelle par moindres carrés
figures-shift_and_scale-meaning = Le décalage et le facteur d’échelle avec lesquels un front s’ajuste le mieux à l’autre.
figures-walk_slope = glissement du front par mètre
figures-walk_slope-meaning = De combien un seuil fixe est franchi plus tard à chaque mètre, parce que la lumière faiblit en chemin : la pente de t₁ − t₂ en fonction de la distance, avec le retard t₁ à un seuil fixe et t₂ à une fraction constante. D’après { $n } lignes.
figures-walk_slope-source = Droite pondérée des différences en fonction de la distance : ISO/TS 28037:2010, article 6
figures-walk_shift = effet d’un seuil fixe sur v
figures-walk_shift-meaning = Variation relative de v si les fronts étaient datés à un seuil fixe.
figures-walk_shift-source = v = f/b, avec b + w à la place de b
tables-states-empty = vide
tables-states-incomplete = incomplète
tables-states-used = retenue
tables-states-struck = écartée
tables-outside = { $state } : { $why }
tables-note = Les fichiers sont en UTF-8 et commencent par un indicateur d’ordre des octets. Pour qu’aucun tableur n’exécute un texte comme une formule, une apostrophe précède chaque texte qui commence comme une formule ou par une apostrophe. De même après un point-virgule, une tabulation ou une fin de ligne dans une cellule. Ôtez une apostrophe à chacun de ces endroits pour retrouver le texte saisi.

## Remarques

notices-weights-grave = Grave
notices-weights-look = À vérifier
notices-weights-know = À savoir
notices-lead = { $weight }.
notices-more = et { $n } de plus
notices-row = ligne { $n }
notices-in-row = { $weight } : { $text }
notices-signs = Ce qui l’indique :

## Ce que le cahier remarque de lui-même : ce qui est remarqué, et ce qu’il faut regarder

notice-entry_replaced = Ce qui a été saisi dans ces champs est inutilisable, et le résultat n’en tient pas compte : { $fields }.
notice-entry_replaced-look = Vérifiez les champs signalés : chacun dit ce qui y est attendu.
notice-vague_splice = La position du rail « { $rail } » est incertaine de { $u }, plus d’un vingtième de sa longueur de { $length }.
notice-vague_splice-look = Vérifiez l’incertitude saisie pour la position du rail, et son unité : un nombre sans unité est dans celle de la règle.
notice-rail_unplaced =
    { $n ->
        [one] La ligne { $rows } n’est pas retenue : la position de son rail n’est pas connue.
       *[other] Les lignes { $rows } ne sont pas retenues : la position de leur rail n’est pas connue.
    }
notice-rail_unplaced-look = Vérifiez la position de ce rail dans « Montage », et celle du rail qui le précède.
notice-vague_reading = Une lecture sur le rail « { $rail } » est incertaine de { $u }, plus d’un vingtième de sa longueur.
notice-vague_reading-look = Vérifiez l’incertitude d’une lecture de la règle déclarée pour ce rail, et son unité : un nombre sans unité est dans celle de la règle.
notice-rehearsal = Ce cahier est un entraînement : ses lectures viennent d’un banc simulé, rien n’a été mesuré.
notice-rehearsal-look = Les valeurs vraies peuvent être montrées dans « Plan de mesure ».
notice-off_the_rail =
    { $n ->
        [one] La lecture de la ligne { $rows } est hors de l’étendue de son rail.
       *[other] Les lectures des lignes { $rows } sont hors de l’étendue de leurs rails.
    }
notice-off_the_rail-look = Vérifiez le nombre saisi, son unité, le rail nommé et l’étendue donnée pour ce rail.
notice-ruler_restarts = La règle du rail « { $rail } » semble recommencer sans changement de rail : à partir d’une ligne, toutes les distances sont décalées du même pas.
notice-ruler_restarts-look = Vérifiez si le chariot était passé sur le rail suivant, dont la règle a son propre zéro.
notice-edge_off_screen =
    { $n ->
        [one] Un front de la ligne { $rows } est hors de l’écran, large de { $width }.
       *[other] Des fronts des lignes { $rows } sont hors de l’écran, large de { $width }.
    }
notice-edge_off_screen-look = Vérifiez le nombre saisi, et la largeur de l’écran donnée dans « Montage ».
notice-coarse_figures = Les lectures de la règle des lignes { $rows } sont saisies avec moins de chiffres que leur incertitude déclarée.
notice-coarse_figures-look = Si la règle a été lue plus finement qu’écrit, écrivez { $finer }, et non { $coarse }.
notice-pair = { $one } avec { $other }
notice-disagreeing_places = Des lignes à la même position ont des retards qui diffèrent de plus de quatre fois leur incertitude : { $pairs }.
notice-disagreeing_places-look = Vérifiez si la base de temps, le déclenchement ou le rail a changé entre elles.
notice-delay_falls =
    { $n ->
        [one] Le retard diminue à la ligne { $rows } alors que la distance croît.
       *[other] Le retard diminue aux lignes { $rows } alors que la distance croît.
    }
notice-delay_falls-throughout = Le retard diminue alors que la distance croît, sur toute la série.
notice-delay_falls-look = Vérifiez le sens de la règle, et si les fronts A et B ont été échangés.
notice-delay_below_uncertainty =
    { $n ->
        [one] Le retard de la ligne { $rows } est plus petit que sa propre incertitude.
       *[other] Les retards des lignes { $rows } sont plus petits que leurs propres incertitudes.
    }
notice-delay_below_uncertainty-look = Vérifiez si une base de temps plus rapide écarterait davantage les deux fronts.
notice-beyond_a_period =
    { $n ->
        [one] Le retard de la ligne { $rows } dépasse une période des impulsions, { $period } ns : un retard n’est connu qu’à un nombre entier de périodes près.
       *[other] Les retards des lignes { $rows } dépassent une période des impulsions, { $period } ns : un retard n’est connu qu’à un nombre entier de périodes près.
    }
notice-beyond_a_period-look = Vérifiez quel front de B appartient à quelle impulsion de A, et la fréquence des impulsions donnée dans « Montage ».
notice-treated_as_exact = Traité comme exact, avec une incertitude de 0 : { $what }. Une erreur y change c de la même fraction, et le bilan n’a pas de composante pour elle.
notice-treated_as_exact-look = Déclarez la limite de la fiche technique ou de la spécification. Saisissez 0 si elle est négligeable.
notice-treated_as_exact-time-base = la base de temps
notice-treated_as_exact-scale = l’échelle du rail { $rail }
notice-uncertainty_missing-delays = Aucune ligne ne déclare d’incertitude sur son retard. Les retards sont traités comme exacts : u(c) est trop petite.
notice-uncertainty_missing-distances = Aucune ligne ne déclare d’incertitude sur sa distance. Les distances sont traitées comme exactes : u(c) est peut-être trop petite.
notice-uncertainty_missing-look = Déclarez-la dans chaque ligne. Saisissez 0 si elle est négligeable.
notice-defaults_only = Toutes les incertitudes sont encore des valeurs par défaut.
notice-defaults_only-look = Déclarez avec quelle finesse vous avez vraiment pu lire la règle, les raccords et les fronts.
notice-walk = Les retards sont datés à un seuil fixe, et les impulsions faiblissent le long des rails : à elle seule, ce glissement du front change v de { $percent } %.
notice-walk-look = Datez les fronts à une fraction constante de leur amplitude.
notice-walk_twice =
    { $n ->
        [one] Le bilan a une composante pour le glissement du seuil fixe, calculée d’après les traces. La composante déclarée « { $names } » agit aussi sur ces retards : si elle représente le même glissement, il compte deux fois.
       *[other] Le bilan a une composante pour le glissement du seuil fixe, calculée d’après les traces. Ces composantes déclarées agissent aussi sur ces retards : { $names }. Celle qui représente le même glissement le fait compter deux fois.
    }
notice-walk_twice-look = Supprimez la composante déclarée si elle représente le glissement : la composante calculée suit des traces. Gardez-la si elle représente autre chose.
notice-second_pulse =
    { $n ->
        [one] Les traces de la ligne { $rows } montrent une seconde impulsion. La première a été mesurée.
       *[other] Les traces des lignes { $rows } montrent une seconde impulsion. La première a été mesurée.
    }
notice-second_pulse-look = Regardez les traces : A et B doivent être des fronts de la même impulsion, et un écho ne doit pas élever le sommet de l’une. Enregistrez moins longtemps, ou réduisez la fréquence des impulsions, pour que chaque trace montre une seule impulsion. Deux détecteurs de types différents peuvent donner la même image : leurs sommets montent autrement, et le retard en dépend autant.
notice-unlike_edges =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, les fronts de A et de B n’ont pas la même forme ; le retard dépend donc de l’endroit du front où il est pris.
       *[other] Sur les traces des lignes { $rows }, les fronts de A et de B n’ont pas la même forme ; les retards dépendent donc de l’endroit du front où ils sont pris.
    }
notice-unlike_edges-look = Regardez les traces. Dans quelques lignes, un écho peut se mêler à l’un des fronts : cherchez ce qui réfléchit, et enregistrez de nouveau. Dans toutes les lignes de la même façon, ce sont les détecteurs ou leurs câbles qui diffèrent : cela décale tous les retards du même temps, donc l’ordonnée à l’origine, mais pas c.
notice-signal_before =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, un signal avant l’impulsion perturbe la ligne de base.
       *[other] Sur les traces des lignes { $rows }, un signal avant l’impulsion perturbe la ligne de base.
    }
notice-signal_before-look = Regardez les traces : le front est daté à partir de cette ligne de base. Cherchez d’où vient le signal, et enregistrez de nouveau.
notice-not_level =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, la ligne de base n’est pas plate avant l’impulsion : elle dérive, ou un ronflement lent s’y ajoute.
       *[other] Sur les traces des lignes { $rows }, la ligne de base n’est pas plate avant l’impulsion : elle dérive, ou un ronflement lent s’y ajoute.
    }
notice-not_level-look = Regardez les traces : l’amplitude, et avec elle le front, est prise à partir de cette ligne de base. Cherchez ce qui la fait bouger, et enregistrez de nouveau.
notice-air_left_out = L’incertitude de c omet l’air : les incertitudes déclarées de l’air dépassent le domaine des équations.
notice-air_left_out-look = Vérifiez les incertitudes saisies avec la température, la pression et l’humidité de l’air.
notice-few_on_edge =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, moins de trois échantillons se trouvent sur un front.
       *[other] Sur les traces des lignes { $rows }, moins de trois échantillons se trouvent sur un front.
    }
notice-few_on_edge-look = La position du front entre deux échantillons est mal connue. Enregistrez avec un intervalle d’échantillonnage plus court.
notice-flat_top =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, le sommet d’une impulsion a partout la même valeur : l’impulsion peut être écrêtée.
       *[other] Sur les traces des lignes { $rows }, le sommet d’une impulsion a partout la même valeur : les impulsions peuvent être écrêtées.
    }
notice-flat_top-look = Le front d’une impulsion écrêtée est lu trop tôt. Si cette valeur est la plus grande que l’appareil peut enregistrer, enregistrez de nouveau avec un calibre plus grand.
notice-rough =
    { $n ->
        [one] Sur les traces de la ligne { $rows }, le bruit cache tant d’un front que l’incertitude du retard n’est elle-même que grossièrement connue.
       *[other] Sur les traces des lignes { $rows }, le bruit cache tant d’un front que les incertitudes des retards ne sont elles-mêmes que grossièrement connues.
    }
notice-rough-look = Moyennez plus d’impulsions. La droite et l’intercorrélation supportent moins de bruit que les autres datations des fronts.
notice-supposed_unit =
    { $n ->
        [one] Les fichiers de traces de la ligne { $rows } ne disent pas en quelle unité sont leurs temps : elle a été supposée.
       *[other] Les fichiers de traces des lignes { $rows } ne disent pas en quelle unité sont leurs temps : elle a été supposée.
    }
notice-supposed_unit-look = Vérifiez les retards de ces lignes. Ajoutez de nouveau les fichiers, et choisissez l’unité ou tapez l’intervalle d’échantillonnage là où leurs colonnes sont montrées, même s’ils sont comme supposé.
notice-uneven_steps =
    { $n ->
        [one] Les traces de la ligne { $rows } ont été échantillonnées à des pas inégaux. Leurs échantillons ont été ramenés à des pas égaux d’après les instants du fichier.
       *[other] Les traces des lignes { $rows } ont été échantillonnées à des pas inégaux. Leurs échantillons ont été ramenés à des pas égaux d’après les instants des fichiers.
    }
notice-uneven_steps-look = Les observations à côté des traces disent de combien les pas diffèrent. Si votre enregistreur échantillonne à pas égaux, vérifiez la colonne des temps.
notice-height_unknown =
    { $n ->
        [one] Sur la ligne { $rows }, la ligne de base ou le sommet d’un front est hors de l’écran : sa mi-hauteur est une supposition.
       *[other] Sur les lignes { $rows }, la ligne de base ou le sommet d’un front est hors de l’écran : sa mi-hauteur est une supposition.
    }
notice-height_unknown-look = Refaites la photo avec les deux impulsions entières à l’écran. Si ce n’est pas possible, déclarez une incertitude de marque plus grande.
notice-grid_bent = Un contrôle de l’objectif est à { $off } div de là où le placent les marques de coin : une marque est fausse, ou l’objectif déforme la photo. Cela entre dans l’incertitude de chaque ligne lue sur cette grille.
notice-grid_bent-look = Vérifiez les marques de coin. Si elles sont justes, prenez la photo de plus loin.
notice-few_rows =
    { $n ->
        [one] Une seule ligne est retenue : trop peu pour tester la linéarité.
       *[other] Seulement { $n } lignes sont retenues : trop peu pour tester la linéarité.
    }
notice-few_rows-look = Mesurez à davantage de positions, au moins trois de chaque côté d’un raccord.
notice-not_diagnosed = { $n } lignes sont retenues, et une matrice de covariance est déclarée pour certaines d’entre elles. Parmi un si grand nombre, les erreurs de lignes, de rails et de bases de temps n’ont pas été recherchées.
notice-not_diagnosed-look = Vérifiez vous-même les résidus et les autres tests de la droite.
notice-scatter_too_large =
    { $nu ->
        [one] Les lignes se dispersent plus que ne le permettent leurs incertitudes déclarées (χ² = { $chi } avec { $nu } degré de liberté).
       *[other] Les lignes se dispersent plus que ne le permettent leurs incertitudes déclarées (χ² = { $chi } avec { $nu } degrés de liberté).
    }
notice-scatter_too_large-look = Vérifiez s’il y a une ligne erronée, un saut à un raccord, ou des incertitudes déclarées trop petites. Choisissez dans « Résultat » l’incertitude que vous indiquez, et dites pourquoi.
notice-scatter_too_small =
    { $nu ->
        [one] Les lignes se dispersent moins que ne le laissent attendre leurs incertitudes déclarées (χ² = { $chi } avec { $nu } degré de liberté) : ces incertitudes sont peut-être déclarées trop grandes.
       *[other] Les lignes se dispersent moins que ne le laissent attendre leurs incertitudes déclarées (χ² = { $chi } avec { $nu } degrés de liberté) : ces incertitudes sont peut-être déclarées trop grandes.
    }
notice-scatter_too_small-look = Vérifiez d’abord l’incertitude d’une lecture de front et d’une lecture de la règle.
notice-step_at_splice = Les lectures montrent un saut de { $step } mm (incertitude-type { $u } mm) entre le rail « { $rail } », avec ceux qui sont raccordés après lui, et les autres rails.
notice-step_at_splice-look = Vérifiez les graduations, l’écart et le sens de la règle inscrits pour la position de ce rail.
notice-time_base_off = Les lignes lues à { $base } ns par division sont décalées des autres de { $offset } ns (incertitude-type { $u } ns).
notice-time_base_off-recorder = Les lignes datées par l’enregistreur sont décalées des autres de { $offset } ns (incertitude-type { $u } ns).
notice-time_base_off-look = Vérifiez que la bonne base de temps est inscrite dans chacune de ces lignes.
notice-curvature = Les lignes suivent une courbe plutôt qu’une droite.
notice-curvature-look = Vérifiez s’il y a des fronts lus à des hauteurs différentes à mesure que la lumière faiblit, ou une base de temps non linéaire sur l’écran.
notice-runs = Les signes des résidus ne sont pas aléatoires (test des suites).
notice-runs-look = Cherchez dans le graphique des résidus une ondulation, un saut à un raccord, ou un changement entre deux parties de la série.
notice-decisive_row = Une seule ligne décide de la pente : sans la ligne { $row }, son incertitude-type serait { $times } fois plus grande.
notice-decisive_row-look = Vérifiez cette ligne, et si d’autres positions proches peuvent être lues.
notice-faster_than_light = Le résultat dépasse la valeur définie de c de { $percent } %, soit { $times } u.
notice-faster_than_light-look = Vérifiez le facteur de trajet (détecteur ou miroir sur le chariot), la base de temps et chaque raccord.
notice-short_span = Toute la série ne couvre que { $times } fois l’incertitude d’un retard.
notice-short_span-look = Vérifiez si le chariot peut aller plus loin, ou si une base de temps plus rapide est possible.
notice-vague_result = L’incertitude-type vaut { $percent } % de c : trop pour un résultat utile.
notice-vague_result-look = Vérifiez les premières lignes du bilan, et l’unité de chaque nombre qui y est saisi.
notice-dominant_component = Une seule composante commune à plusieurs lignes fait { $percent } % de u²(c) ; davantage de lectures ne la réduisent pas.
notice-dominant_component-look = Vérifiez la première ligne du bilan : cette composante décide seule de l’incertitude.
notice-row_off = La ligne { $rows } est loin de la droite de toutes les autres.
notice-row_off-look = Comparez avec vos notes la lecture, le rail, la base de temps et les deux fronts de cette ligne.
notice-forced_zero = Une ligne indique une distance nulle et un retard nul. Ce n’est pas une mesure : le retard à distance nulle est ce que la droite détermine.
notice-forced_zero-look = Écartez la ligne, sauf si elle a été lue comme les autres.
notice-rows_exchanged = Les lignes { $rows } semblent échangées : avec le retard l’une de l’autre, toutes deux sont sur la droite.
notice-copied_rows = Des lignes à des positions différentes ont les mêmes fronts, jusqu’au dernier chiffre.
notice-copied_rows-look = Vérifiez s’ils ont été recopiés par erreur : relisez ces positions.
notice-edges_swapped = Les fronts A et B de la ligne { $rows } semblent échangés : avec un retard de signe contraire, elle est sur la droite.
notice-edges_swapped-all = Les fronts A et B semblent échangés dans toutes les lignes : les retards ont le mauvais signe.
notice-slipped_decimal = Dans la ligne { $rows }, le séparateur décimal ou une unité semble faux : avec un facteur dix, la ligne est sur la droite.
notice-time_base_slip = La base de temps employée semble différer de celle qui est inscrite.
notice-wrong_rail = La lecture de la ligne { $rows } convient à un autre rail que celui qui est nommé.
notice-beyond_a_period-told = Avec un retard plus court ou plus long d’une période des impulsions, chacune serait sur la droite des autres lignes.
notice-change_from_row = À partir d’une ligne, tous les retards sont décalés : quelque chose a été changé entre deux lignes.
notice-drift = Les retards dérivent avec l’ordre dans lequel les lignes ont été prises.
notice-drift-look = Vérifiez si le laser, les détecteurs ou le déclenchement avaient eu le temps de se stabiliser : relisez quelques positions dans un autre ordre.
notice-ruler_scale = Sur le rail « { $rail } », les distances croissent à un autre rythme que sur les autres : sa règle ou son unité ne convient pas.
notice-ruler_scale-look = Comparez la règle de ce rail à une autre, et vérifiez l’unité inscrite pour elle.
notice-wrong_sense = Avec la règle du rail « { $rail } » comptée dans l’autre sens, les lignes sont sur une même droite.
notice-wrong_sense-all = Avec toutes les règles comptées dans l’autre sens, les lignes sont sur une même droite.
notice-overlap_turned = Avec les deux colonnes du raccord du rail « { $rail } » échangées, les lignes sont sur une même droite.
notice-rail_unit = Avec les lectures du rail « { $rail } » dans une autre unité, les lignes sont sur une même droite.
notice-time_base_off-some = Les lignes lues avec une base de temps ne sont pas sur la droite des autres.
notice-mended =
    { $cause ->
        [row_off] { $what } Sans cette ligne, c vaudrait { $c } × 10⁸ m/s.
        [forced_zero] { $what } Sans cette ligne, c vaudrait { $c } × 10⁸ m/s.
        [rows_exchanged] { $what } Une fois les deux remises à leur place, c vaudrait { $c } × 10⁸ m/s.
        [ruler_restarts] { $what } Avec cette partie de la règle comptée à partir de son propre zéro, c vaudrait { $c } × 10⁸ m/s.
       *[other] { $what } Une fois cela corrigé, c vaudrait { $c } × 10⁸ m/s.
    }
notice-path_factor = Le résultat s’écarte de la valeur définie de c d’un facteur deux, comme lorsqu’un miroir est pris pour un détecteur ou un détecteur pour un miroir.
notice-path_factor-look = Vérifiez ce que porte le chariot, dans « Montage ».
notice-scale_off = Le résultat est inférieur de { $percent } % à la valeur définie de c, soit { $times } u.
notice-edges_rounded = Tous les fronts sont des multiples de { $step } division, mais leur incertitude déclarée correspond à une lecture à ±{ $limit } division près.
notice-edges_rounded-look = Vérifiez l’incertitude d’une lecture de front. Si les fronts sont arrondis aux graduations, sa limite vaut au moins la moitié de leur écart.
notice-fine_figures = Les lectures de règle sont saisies avec bien plus de chiffres qu’on n’a pu en lire.
notice-fine_figures-look = Écrivez autant de chiffres que la règle en montre. Une moyenne peut en avoir un ou deux de plus.
notice-dominant_component-readings = Les lectures elles-mêmes font { $percent } % de u²(c).

## Ce qu’une remarque propose pour corriger une erreur : une seule modification, que « Annuler » reprend

repair-strike = Écarter la ligne { $rows } pour cette raison
repair-edges = Échanger les fronts A et B de la ligne { $rows }
repair-edges-all = Échanger les fronts A et B de toutes les lignes
repair-exchanged = Échanger les positions des lignes { $rows }
repair-sense = Inverser le sens de la règle du rail « { $rail } »
repair-sense-all = Inverser le sens de toutes les règles
repair-joint = Échanger les lectures du raccord du rail « { $rail } »
repair-path-mirror = Indiquer un miroir sur le chariot
repair-path-detector = Indiquer un détecteur sur le chariot
repair-constant_fraction = Dater tous les fronts à une fraction constante
repair-fitted = Ajuster la position du rail « { $rail } » avec la droite
repair-next-rail =
    { $n ->
        [one] Mettre la ligne { $rows } sur le rail « { $rail } »
       *[other] Mettre les lignes { $rows } sur le rail « { $rail } »
    }
repair-new-rail =
    { $n ->
        [one] Mettre la ligne { $rows } sur un nouveau rail, dont la position est ajustée
       *[other] Mettre les lignes { $rows } sur un nouveau rail, dont la position est ajustée
    }

## La classe

class-title = Classe
class-hint = Lisez les cahiers d’une classe : archives, fichiers notebook.json, dossiers, ou un zip qui en contient plusieurs. Déposez-les ici ou choisissez-les. Chaque résultat est recalculé ici à partir des lectures. Rien ne quitte cette machine, et vos propres cahiers restent tels quels.
class-choose = Choisir des fichiers
class-choose-folder = Choisir un dossier
class-clear = Vider le tableau
class-clear-lost =
    { $n ->
        [one] Rien n’a été vidé : ce que vous avez écrit sur { $n } cahier n’est encore dans aucun fichier, et serait perdu. Téléchargez d’abord les commentaires.
       *[other] Rien n’a été vidé : ce que vous avez écrit sur { $n } cahiers n’est encore dans aucun fichier, et serait perdu. Téléchargez d’abord les commentaires.
    }
class-clear-anyway = Vider quand même
class-progress = Avancement de la lecture
class-running = Fichiers lus : { $done } sur { $all }
class-done =
    { $n ->
        [one] { $n } fichier lu.
       *[other] { $n } fichiers lus.
    }
class-stopped = Arrêté. Fichiers lus : { $done } sur { $all }.
class-failed = La lecture s’est arrêtée ({ $why }). Ce qui a été lu avant est dans le tableau. Réessayez ; si cela n’aide pas, rechargez la page.
class-passed-over =
    { $n ->
        [one] { $n } autre fichier ne contient pas de cahier d’après son nom et n’a pas été lu.
       *[other] { $n } autres fichiers ne contiennent pas de cahier d’après leurs noms et n’ont pas été lus.
    }
class-no_notebook = Il n’y a pas de cahier dans ce zip. Choisissez une archive telle qu’elle a été téléchargée, ou un zip de telles archives.
class-teachers = Une clé ou des commentaires dans un même zip que des cahiers ne sont pas lus : un étudiant a pu les y mettre. S’ils sont les vôtres, décompressez le zip et choisissez-les à part.
class-deep = Ce zip se trouve dans un zip qui se trouve dans un autre. Décompressez d’abord celui de l’extérieur.
class-twice = Le même cahier que { $path }, qui compte une fois.
class-crashed = Le calcul de ce cahier s’est terminé de façon inattendue. Ouvrez-le seul pour en voir plus.
class-incomplete =
    { $n ->
        [one] { $n } ligne incomplète
       *[other] { $n } lignes incomplètes
    }
class-take-table = Télécharger le tableau (CSV)
class-search = Chercher dans les noms
class-filter = Montrer
class-filters-all = tous
class-filters-marked = avec quelque chose à vérifier
class-filters-without = sans résultat
class-filters-notice = avec la remarque choisie
class-shown = { $shown } sur { $all } dans le tableau
class-empty = Aucun cahier n’a encore été lu.
class-table = Cahiers de la classe
class-open-of = Ouvrir { $name }
class-open-hint = « Ouvrir » montre un cahier tel qu’il a été remis, en lecture seule. Il n’est pas ajouté à vos propres cahiers, sauf si vous en ouvrez une copie.
class-reading-hint = En lecture seule : fait ici à partir du fichier remis, et conservé nulle part. Ce que vous écrivez se place à côté.
class-reading-copy = Ouvrir une copie parmi mes cahiers
class-reading-close = Retour à la classe
class-comment = Commenter
class-comment-on = Commenter : { $place }
class-comments =
    { $n ->
        [one] { $n } commentaire
       *[other] { $n } commentaires
    }
class-general = Commentaire sur l’ensemble
class-mark = Note
class-feedback = Commentaires et notes
class-feedback-hint = Ouvrez un cahier par « Ouvrir » pour écrire à côté de ses sections, lignes et réponses. Ce que vous écrivez dure tant que cette page est ouverte : téléchargez-le avant de la fermer. Pour continuer un autre jour, choisissez de nouveau ces fichiers ici, avec les cahiers, et dites quel nom est le vôtre. Les fichiers d’un collègue, choisis ici aussi, se lisent à côté des vôtres. Les étudiants ouvrent leur fichier comme un cahier.
class-feedback-from = Votre nom, tel que les étudiants le voient
class-feedback-mine = Je suis { $from }
class-feedback-mine-unnamed = Ce qui est sans nom est de moi
class-feedback-nameless = une personne qui ne donne pas son nom
class-feedback-whose = Affichés seulement, sous un autre nom que le vôtre : les commentaires de { $names }. Si vous êtes l’une de ces personnes, choisissez-la sous « Commentaires et notes » pour continuer ses commentaires, là où vous n’en avez encore écrit aucun.
class-feedback-renamed =
    { $n ->
        [one] Ce que vous avez écrit sur { $n } cahier porte maintenant le nom { $from }.
       *[other] Ce que vous avez écrit sur { $n } cahiers porte maintenant le nom { $from }.
    }
class-feedback-doubtful =
    { $n ->
        [one] Sur { $n } cahier, plusieurs commentaires sont sans nom : aucun n’a été pris pour le vôtre. Videz le tableau, puis choisissez vos fichiers seuls avec les cahiers.
       *[other] Sur { $n } cahiers, plusieurs commentaires sont sans nom : aucun n’a été pris pour le vôtre. Videz le tableau, puis choisissez vos fichiers seuls avec les cahiers.
    }
class-feedback-take = Télécharger tous les commentaires (zip)
class-feedback-take-one = Télécharger ces commentaires
class-feedback-file = commentaires
class-colleague = Un collègue
class-said-by = { $from } : { $brief }
class-feedback-state =
    { $unsaved ->
        [0] Cahiers avec commentaires ou note : { $n }. Tout est téléchargé.
       *[other] Cahiers avec commentaires ou note : { $n }. Pas encore téléchargés : { $unsaved }.
    }
class-feedback-read =
    { $astray ->
        [0] Fichiers de commentaires : { $n }.
       *[other] Fichiers de commentaires : { $n }, dont { $astray } ne vont avec aucun cahier du tableau, ou avec un cahier que vous avez déjà commenté.
    }
class-columns-who = Cahier
class-columns-file = Fichier
class-columns-title = Titre
class-columns-people = Noms
class-columns-rows = Lignes
class-columns-struck = Écartées
class-columns-c = c
class-columns-u = u(c)
class-columns-expanded = U
class-columns-z = z, par rapport à c₀
class-columns-apart = z, par rapport à la médiane
class-columns-chi_square = χ²/ν
class-columns-degrees_of_freedom = ν
class-columns-p_value = p
class-columns-method = Méthode
class-columns-notices = Remarques du cahier
class-columns-missing = Manque
class-columns-remarks = Observations
class-columns-refusal = Non lu
class-sort = Trier par { $column }
class-struck = { $used } (écartées : { $struck })
class-methods-ordinary = moindres carrés
class-methods-weighted = moindres carrés pondérés
class-methods-both = deux incertitudes
class-methods-shared = composantes communes
class-after-seal =
    { $n ->
        [one] { $n } modification après l’ouverture du sceau
       *[other] { $n } modifications après l’ouverture du sceau
    }
class-differs = Des valeurs enregistrées ne sont pas celles calculées ici : { $figures }
class-scattered = u et U sont tirées de la dispersion des résidus
class-coverage = U a une autre probabilité de couverture que 95 % : { $coverage }
class-handed_otherwise = Ce qui a été distribué manque ici, ou n’est pas le même que dans la plupart de ces cahiers : un autre document distribué, ou un fichier modifié ?
class-alike = Mêmes lectures dans { $rows } lignes que { $names } : travail en commun ?
class-alike-merged = Mêmes lectures dans { $rows } lignes que { $names } : leurs cahiers ont été fusionnés, comme le dit l’historique.
class-columns-key = Clé
class-key-both = c et t₀ couverts
class-key-c = c couvert, t₀ non
class-key-t0 = t₀ couvert, c non
class-key-neither = ni c ni t₀ couverts
class-key-none = pas dans la clé
class-key-read =
    { $n ->
        [one] La clé de « { $title } » avec son jeu de données a été lue. La colonne Clé dit si c ± U couvre c₀, et si t₀ ± k·u, avec le même k, couvre la valeur vraie de t₀.
       *[other] La clé de « { $title } » avec ses { $n } jeux de données a été lue. La colonne Clé dit si c ± U couvre c₀, et si t₀ ± k·u, avec le même k, couvre la valeur vraie de t₀. Avec k = 2, un intervalle juste sur vingt ne couvre pas la valeur vraie.
    }
key-damaged = La clé « { $name } » est endommagée. Téléchargez-la de nouveau, ou prenez la copie que vous avez gardée.
key-later = La clé « { $name } » a été faite par une version plus récente de cette page. Lisez-la avec cette version.
class-too_few =
    { $n ->
        [0] Aucun résultat encore. Il en faut deux pour comparer.
       *[other] Un seul résultat ({ $n }). Il en faut deux pour comparer.
    }
class-out_of_range = Les résultats sont trop grands, ou leurs incertitudes trop petites, pour le calcul. Cherchez une unité fausse.
class-together = Tous les résultats ensemble
class-nothing = Choisissez d’abord des fichiers. Tous les résultats se rangent alors ici dans l’ordre, chacun avec son incertitude élargie, avec leur moyenne et leur accord.
class-plot = Tous les résultats dans l’ordre, chacun avec son incertitude élargie
class-summary =
    { $n ->
        [one] { $n } résultat, en 10⁶ m/s.
       *[other] { $n } résultats en 10⁶ m/s, du plus petit c au plus grand. La bande est la moyenne de la classe ± 2 u.
    }
class-weighted = moyenne pondérée
class-weighted-meaning = La moyenne de tous les résultats, chacun pondéré par 1/u². Son incertitude vient des seules incertitudes déclarées. Les résultats dont l’incertitude est très petite en décident.
class-chi_square = accord des résultats
class-chi_square-value = { $chi } avec ν = { $nu }, { $p }
class-chi_square-meaning = χ² des résultats autour de leur moyenne pondérée. Une petite valeur p indique qu’ils se dispersent plus que leurs incertitudes ne le permettent : certains omettent un effet.
class-mandel_paule = moyenne, avec dispersion entre cahiers (Paule–Mandel)
class-mandel_paule-meaning = τ est la dispersion entre cahiers que les incertitudes déclarées n’expliquent pas. Il est choisi pour que χ², calculé avec lui, soit égal à ν. Le graphique utilise cette moyenne. Quelques résultats très éloignés la déplacent.
class-dersimonian_laird = moyenne, avec dispersion entre cahiers (DerSimonian–Laird)
class-dersimonian_laird-meaning = De même avec τ tiré des moments des résultats, en un pas.
class-median = médiane
class-median-meaning = La moitié des résultats est au-dessus, l’autre moitié au-dessous. Quelques résultats très éloignés ne la déplacent pas ; la colonne « z, par rapport à la médiane » montre donc lesquels ils sont : c’est l’écart de chaque résultat à la médiane, divisé par sa propre u(c).
class-between = { $mean } ; τ = { $between }
class-none_between = { $mean } ; τ = 0
class-residuals = Résidus de tous les cahiers, selon la position
class-residuals-unit = Résidu en
class-residuals-units-normalized = incertitudes-types
class-residuals-units-nanoseconds = nanosecondes
class-residuals-drawn =
    { $rows ->
        [one] { $rows } ligne
       *[other] { $rows } lignes
    } de { $n ->
        [one] { $n } cahier
       *[other] { $n } cahiers
    }, selon la distance à la lame séparatrice en mètres, avec les rails en dessous. Un point est une ligne du tableau, au-dessus ou au-dessous de la droite de son propre cahier ; un trait est la médiane à une position, un centimètre d’un rail. Les lignes écartées ou incomplètes sont laissées de côté.
class-residuals-shared =
    { $n ->
        [one] { $n } cahier partage des lectures avec un cahier précédent : il est tracé, mais ne compte pas une seconde fois pour juger des positions.
       *[other] { $n } cahiers partagent des lectures avec un cahier précédent : ils sont tracés, mais ne comptent pas une seconde fois pour juger des positions.
    }
class-residuals-without =
    { $n ->
        [one] { $n } cahier sans droite est laissé de côté.
       *[other] { $n } cahiers sans droite sont laissés de côté.
    }
class-residuals-unread =
    { $n ->
        [one] { $n } ligne est laissée de côté : sa lecture n’est pas un simple nombre, ou elle n’a pas de résidu.
       *[other] { $n } lignes sont laissées de côté : leurs lectures ne sont pas de simples nombres, ou elles n’ont pas de résidu.
    }
class-residuals-sealed =
    { $n ->
        [one] { $n } résultat est scellé : ses lignes ne sont tracées qu’en incertitudes-types.
       *[other] { $n } résultats sont scellés : leurs lignes ne sont tracées qu’en incertitudes-types.
    }
class-residuals-beyond =
    { $n ->
        [one] { $n } point hors de l’échelle est au bord.
       *[other] { $n } points hors de l’échelle sont au bord.
    }
class-residuals-position = position
class-residuals-rows = lignes
class-residuals-smallest = plus petit résidu normalisé
class-residuals-median = résidu normalisé médian
class-residuals-largest = plus grand résidu normalisé
class-residuals-median-time = résidu médian
class-places-none-shared = Il n’y a pas deux cahiers, chacun avec ses propres lectures, qui aient une ligne à la même position : les positions ne peuvent pas être comparées.
class-places-none = Aucune position ne se distingue : nulle part les lignes des cahiers ne s’écartent ensemble de leurs droites plus que par hasard.
class-places-some =
    { $n ->
        [one] À une position, les lignes des cahiers s’écartent ensemble de leurs droites, plus que par hasard. Vérifiez-y la règle et le raccord : chaque cahier, pris seul, peut paraître juste.
       *[other] À { $n } positions, les lignes des cahiers s’écartent ensemble de leurs droites, plus que par hasard. Vérifiez-y les règles et les raccords : chaque cahier, pris seul, peut paraître juste.
    }
class-places-rule = La position la plus nette vient en premier. Chacune des suivantes est jugée sur des droites ajustées sans celles d’avant. Si tous les cahiers ont leurs propres lectures et que rien n’est faux, une position est nommée dans une classe sur cent environ, au plus.
class-places-rail = rail { $rail } à { $mark }
class-places-distance = distance { $mark }
class-places-ns = { $ns } ns ({ $u } u)
class-places-u = { $u } u
class-places-above = { $place } : le retard est au-dessus de la droite dans { $together } cahiers sur { $n } ; la médiane est de { $by }.
class-places-below = { $place } : le retard est au-dessous de la droite dans { $together } cahiers sur { $n } ; la médiane est de { $by }.
class-lost = D’où vient l’incertitude de la classe
class-lost-hint =
    { $n ->
        [one] Les composantes de { $n } bilan, selon leur part de u²(c).
       *[other] Les composantes de { $n } bilans, selon la médiane de leur part de u²(c) : la moitié des bilans a une part plus grande, la moitié une plus petite. La somme des médianes n’est pas forcément 100 %.
    }
class-lost-component = Composante
class-lost-share = Part, médiane
class-lost-largest = La plus grande dans
class-standing = Remarques restées sans réponse
class-standing-hint = Ce que la page a remarqué et à quoi personne n’a répondu avant de remettre son cahier. La formulation est celle du premier cahier qui a cette remarque.
class-standing-none = Ces cahiers n’ont aucune remarque de ce genre.
class-standing-count = { $n } sur { $all } :
class-standing-where = Dans quels cahiers
class-standing-in = { $name } : { $notice }
class-standing-show = Montrer dans le tableau
class-standing-show-of = Montrer dans le tableau : { $notice }

## Cahiers

notebooks-file = Ouvrir un fichier
notebooks-file-hint = Un fichier que l’on vous a donné, ou une archive téléchargée ici, devient un nouveau cahier. Vous pouvez aussi le déposer n’importe où sur la page.
notebooks-blank = Nouveau cahier vide
notebooks-demo = Nouveau à partir de la démonstration
notebooks-demo-sets-photographs = Démonstration avec photos
notebooks-demo-sets-traces = Démonstration avec traces
notebooks-no-demo = La démonstration n’a pas pu être chargée.
notebooks-open = Ouvrir
notebooks-current = ouvert en ce moment
notebooks-rename = Renommer
notebooks-new-name = Nouveau titre
notebooks-keep-name = Enregistrer ce titre
notebooks-duplicate = Dupliquer
notebooks-copy-of = { $title } (copie)
notebooks-delete = Supprimer
notebooks-deleted = « { $title } » a été supprimé.
notebooks-bin = Cahiers supprimés
notebooks-put-back = Récupérer
notebooks-forget = Supprimer définitivement
notebooks-forget-sure = Appuyez de nouveau pour supprimer définitivement
notebooks-busy = Ce cahier est ouvert en écriture dans une autre fenêtre. Fermez-le d’abord là-bas.
notebooks-nothing-kept = Ce navigateur bloque le stockage : ces cahiers durent jusqu’à la fermeture de la page.
notebooks-action = { $action } : { $title }

## Réglages

preferences-theme = Apparence
preferences-themes-auto = comme le système
preferences-themes-light = claire
preferences-themes-dark = sombre
preferences-contrast = Contraste
preferences-contrasts-auto = selon le système
preferences-contrasts-more = contraste renforcé
preferences-language = Langue
preferences-language-not-kept = Ce navigateur bloque le stockage : la langue ne peut pas être changée ici sans perdre les cahiers. Choisissez-la dans les réglages du navigateur.
preferences-mark = Séparateur décimal de ce cahier
preferences-mark-hint = Les nombres restent comme ils ont été saisis : choisissez le séparateur avant la première lecture.
preferences-marks-point = point : 1.5
preferences-marks-comma = virgule : 1,5

## La visite de la démonstration

tour = Visite de la démonstration
tour-offer = La vitesse de la lumière, mesurée le long de trois rails : un exemple aux lectures inventées. Essayez tout, Annuler revient en arrière.
tour-start = Faire la visite (2 minutes)
tour-dismiss = Pas maintenant
tour-place = Visite, étape { $n } sur { $all }
tour-back = Retour
tour-next = Suivant
tour-done = Terminer la visite
tour-leave = Quitter la visite
tour-apparatus = Trois rails sont alignés, à partir de la lame séparatrice. Chaque règle a son propre zéro. La position déclarée de chaque rail dit où il se trouve, et à quel point on le sait.
tour-readings = Une ligne pour chaque position : la règle, la base de temps et les deux fronts sur l’écran. La distance d et le retard Δt suivent aussitôt. Une ligne est écartée : elle reste visible, avec sa raison.
tour-line = Chaque ligne du tableau est un point. La pente de la droite est le retard par mètre ; la vitesse de la lumière en découle. La droite ne passe pas forcément par zéro.
tour-residuals = Les résidus sont les écarts des lignes à la droite. Sans structure apparente, et pour la plupart entre −2 et 2, ils disent que la droite convient.
tour-budget = Ce qui rend c incertain, la plus grande composante d’abord. Davantage de lignes réduisent ce qui est indépendant dans chacune, mais pas l’incertitude d’un raccord, qui déplace toutes les lignes au-delà. Déplacez un curseur pour voir ce qu’apporterait une amélioration.
tour-result = Le résultat avec son incertitude, arrondi, et en phrases que vous pouvez copier.
tour-report = Imprimez le rapport, ou remettez l’archive : elle contient tout le cahier avec chaque modification.
tour-end = Changez maintenant une lecture de ce tableau, et observez comment c change. Pour commencer votre propre cahier : Cahiers, Nouveau cahier vide.

## Comment remplir une section

how = Comment faire
how-of = Comment faire : { $section }
how-more = Plus de détails dans l’aide.
how-glossary = Glossaire
how-glossary-of = Glossaire : { $term }
how-apparatus = Dites ce que porte le chariot. Décrivez ensuite chaque rail : son unité, sa première et sa dernière graduation, avec quelle finesse sa règle peut être lue, et où il est. Pour le premier rail, c’est la lecture à la lame séparatrice ; pour chaque rail suivant, le raccord. Comparez le dessin au banc réel. Les champs laissés vides prennent la valeur par défaut, en gris.
how-plan = Choisissez des positions avant de mesurer. Répartissez-les sur toute la longueur, avec au moins trois de chaque côté d’un raccord. L’incertitude attendue suit aussitôt. Un entraînement est un cahier d’exercice avec des lectures simulées.
how-readings = Écrivez une ligne pour chaque position : le rail, ce qu’indique sa règle, la base de temps, et les deux fronts en divisions de l’écran. Lisez les deux fronts à la moitié de leur propre hauteur. Les lectures répétées d’un front vont dans une seule cellule, séparées par des points-virgules. Dans u(d) et u(Δt), un nombre seul est une incertitude-type u ; précédé de ± ou de +-, c’est une limite ±a. Une valeur peut porter son incertitude-type entre parenthèses, comme 1,250(3) ; un nombre tapé après elle avec ± est pris de même.
how-delays = Au lieu de saisir les fronts, ajoutez des photos de l’écran ou les traces enregistrées de toute une série. La page suggère où sont les fronts ; vous vérifiez et acceptez.
how-line = Regardez d’abord les résidus : sans structure apparente, et pour la plupart entre −2 et 2. Une ligne très éloignée est le plus souvent une faute : cherchez-la. Un saut entre deux rails met en cause leur raccord. Une courbe a une cause, elle aussi. N’écartez une ligne qu’avec une raison.
how-uncertainty = Le bilan énumère ce qui rend le résultat incertain, la plus grande composante d’abord : améliorez celle-là. Le contrôle par Monte Carlo vérifie si l’on peut se fier à l’intervalle du bilan.
how-result = Copiez les phrases, ou donnez c avec son incertitude-type u, ou avec U, k et la probabilité de couverture. Un écart à la valeur définie plus grand que U signifie qu’un effet manque peut-être au bilan.
how-report = Remplissez les champs, ouvrez le rapport et imprimez-le, ou remettez l’archive. L’archive contient tout le cahier avec chaque modification, et peut être rouverte.
how-class = Choisissez les fichiers remis. Chaque résultat est recalculé à partir des lectures. Regardez d’abord les cahiers avec des remarques, ou dont les valeurs enregistrées diffèrent ; ouvrez-en un pour voir chaque modification.

## Un champ

field-if-empty = Par défaut : { $value }
field-if-empty-limit = Par défaut : ±{ $value }, donc u = a ÷ √3 = { $u }
field-if-empty-exact = Par défaut : 0, valeur traitée comme exacte
field-if-empty-behind = Par défaut : { $value }, limite ±{ $limit }, donc u = a ÷ √3 = { $u }
field-behind-limit = Pas d’incertitude après ± : limite par défaut ±{ $limit }, donc u = a ÷ √3 = { $u }
field-behind = Incertitude-type u = { $u }
field-kind = { $field } : saisie comme
field-kinds-limit = limite ±a
field-kinds-standard = incertitude-type u
field-follows = u = a ÷ √{ $root } = { $u }
defaults-half_pulse = la moitié de la plus petite impulsion
defaults-exact = 0, valeur traitée comme exacte

## Un nombre saisi qui ne peut pas être employé

number-empty = Rien n’est saisi ici. Saisissez un nombre.
number-empty_repeat = La lecture répétée { $position } est vide. Saisissez-y un nombre, ou supprimez le point-virgule de trop.
number-none = « { $found } » n’est pas un nombre. Saisissez des chiffres, par exemple { $example }.
number-comma = « { $found } » contient une virgule, mais le séparateur décimal de ce cahier est le point. Écrivez un point, et une espace entre les milliers. Avant de saisir le premier nombre, on peut choisir la virgule dans les réglages.
number-point = « { $found } » contient un point, mais le séparateur décimal de ce cahier est la virgule. Écrivez une virgule, et une espace entre les milliers. Avant de saisir le premier nombre, on peut choisir le point dans les réglages.
number-several_marks = « { $found } » contient plus d’un séparateur décimal. Gardez-en un.
number-grouping = « { $found } » contient des espaces qui ne séparent pas des tranches de trois chiffres. Supprimez-les. Seules des lectures répétées d’un front peuvent se suivre, séparées par des points-virgules.
number-exponent = « { $found } » n’est pas une puissance de dix complète. Supprimez-la, ou écrivez-la sous la forme e8 ou × 10^8.
number-shared_exponent = Dans « { $found } », la puissance de dix peut se rapporter aux deux nombres ou seulement au second. Mettez les deux entre parenthèses, ou écrivez la puissance après chacun.
number-negative_uncertainty = « { $found } » est une incertitude inférieure à zéro. Écrivez-la sans signe moins.
number-unknown_unit = « { $found } » n’est pas une unité de ce champ. Unités possibles : { $units }. Écrivez l’une d’elles, une seule fois, après le nombre.
number-wrong_unit = « { $found } » est une unité d’une autre grandeur : { $dimension }. Ici, la grandeur est : { $expected }. Unités possibles : { $units }.
number-unexpected = « { $found } » n’est pas attendu après le nombre. Écrivez un seul nombre, par exemple 12.
number-too_large = « { $found } » est trop grand pour le calcul. Vérifiez la puissance de dix.
number-too_small = « { $found } » est trop petit pour le calcul. Vérifiez la puissance de dix.
number-too_long = Cette saisie compte { $length } caractères ; un nombre peut en avoir { $limit } au plus. Raccourcissez-la.
number-mixed_units = Certaines lectures répétées ont une unité, d’autres non. Écrivez l’unité après chacune, ou après aucune.
number-uncertain = « { $found } » porte une incertitude, qui n’aurait ici aucun effet. Écrivez un seul nombre, sans ± et sans parenthèses. Si cette grandeur a un champ pour son incertitude, déclarez-la là, sinon comme composante dans « Autres composantes de l’incertitude ».
number-uncertain_uncertainty = « { $found } » porte une incertitude après le nombre, mais ce champ est lui-même une incertitude. Écrivez un seul nombre, sans ± après lui et sans parenthèses.
number-uncertain_edge = « { $found } » porte une incertitude après un nombre, qui n’aurait ici aucun effet. Écrivez le front seul, sans ± et sans parenthèses. Une incertitude commune à tous les fronts se déclare dans le champ « Incertitude d’une lecture de front ».
number-limit_sign = « { $found } » donne une limite, mais ce champ contient une incertitude-type. Choisissez « { $kind } » à côté, ou écrivez le nombre sans ±.
number-negative = « { $found } » est négatif. Une incertitude est nulle ou positive.
number-not_positive = « { $found } » n’est pas supérieur à zéro. Écrivez un nombre supérieur à zéro.
number-not_whole = « { $found } » n’est pas un nombre entier de { $least } à { $most }.
number-too_large_ratio = « { $found } » est supérieur à 50 %. Un nombre sans unité est en pour cent ; ppm est possible aussi.
number-too_large_offset = « { $found } » est si grand qu’aucune droite ne peut être ajustée. Vérifiez le nombre et son unité.
number-coverage = Une probabilité de couverture est d’au moins 50 % et inférieure à 100 %, par exemple 95 %. Un nombre sans unité est en pour cent.
number-fraction = Une fraction constante va de 10 % à 90 %. Un nombre sans unité est en pour cent.
number-beam_angle = À un angle de plus de 500 mrad, le faisceau n’atteindrait pas le chariot. Vérifiez l’unité : un nombre sans unité est en mrad.
number-last_mark = La dernière graduation doit être la plus grande lecture. La plus petite est la première graduation, quel que soit le sens de la règle.

dimension-length = longueur
dimension-time = temps
dimension-timeperdivision = temps par division
dimension-divisions = nombre de divisions
dimension-ratio = rapport
dimension-angle = angle
dimension-frequency = fréquence
dimension-temperature = température
dimension-pressure = pression
dimension-wavelength = longueur d’onde
dimension-voltage = tension
dimension-speed = vitesse
dimension-pixels = distance en pixels

## L’air dont l’indice n’est pas connu

air-out_of_range = { $input } : { $value }. L’indice de réfraction de l’air ne peut être calculé que de { $low } à { $high }. Vérifiez le nombre et son unité.
air-vapour = À cette température et cette humidité, la vapeur d’eau seule aurait une pression de { $vapour }, supérieure à la pression de l’air déclarée, { $pressure }. Vérifiez la pression, la température et l’humidité.

## Un rail dont la position n’est pas connue

splice-unstated = Déclarez la position de ce rail. Jusque-là, ses lectures n’ont pas de distance.
splice-no_distance = Saisissez la distance de cette graduation à la lame séparatrice.
splice-no_mark = Saisissez une lecture sur ce rail.
splice-no_mark_before = Saisissez une lecture sur le rail précédent.
joint-no_rail_before = Aucun rail ne précède le premier. Déclarez la lecture de la règle à la lame séparatrice, ou la distance d’une graduation.
joint-rail_before_unplaced = La position du rail précédent n’est pas encore connue. Déclarez d’abord celle-là.
joint-no_span_before = Une position ajustée part de l’extrémité du rail précédent. Saisissez la première et la dernière graduation de ce rail.
joint-no_pairs = Saisissez au moins une position du chariot, lue sur les deux règles.

## Une ligne qui ne peut pas encore être employée

row-place_twice = La distance est saisie deux fois : comme lecture de la règle et comme distance. Effacez l’une des deux.
row-distance_unreadable = La distance n’est pas un nombre utilisable. Corrigez-la.
row-no_reading = La lecture de la règle manque. Saisissez-la.
row-reading_unreadable = La lecture de la règle n’est pas un nombre utilisable. Corrigez-la.
row-rail_unplaced = La position de son rail n’est pas connue. Déclarez-la dans « Montage ».
row-no_rail = Aucun rail n’est décrit. Décrivez-en un dans « Montage », ou saisissez la distance elle-même.
row-rail_unnamed = Le rail manque. Écrivez le nom du rail sur lequel la lecture a été faite.
row-rail_unknown = Aucun rail ne porte le nom « { $name } ». Les rails sont : { $names }.
row-rail_unknown_none = Aucun rail ne porte le nom « { $name } ». Décrivez les rails dans « Montage ».
row-rail_ambiguous = Plus d’un rail porte le nom « { $name } ». Donnez à chaque rail un nom distinct dans « Montage ».
row-distance_uncertainty_idle = Aucune distance n’est saisie dans cette ligne : cette incertitude n’a pas d’effet. Effacez-la : l’incertitude d’une lecture de règle se déclare à son rail.
row-delay_uncertainty_idle = Aucun retard n’est saisi dans cette ligne : cette incertitude n’a pas d’effet. Effacez-la : celle d’un front se déclare dans « Montage », celle d’une marque sur une photo dans « Retards » ; celle des traces est mesurée.
row-delay_twice = Le retard est saisi deux fois : comme fronts sur l’écran et comme retard. Effacez l’un des deux.
row-delay_twice_evidence = Le retard est donné deux fois : ici, et par la photo ou les traces de cette ligne. Effacez cette cellule, ou retirez la photo ou les traces.
row-delay_unreadable = Le retard n’est pas un nombre utilisable. Corrigez-le.
row-limit = { $name } : { $typed } est lu comme une limite ±a, donc u = a ÷ √3 = { $u }.
row-uncertainty_twice = L’incertitude est saisie deux fois : après la valeur et ici. Effacez l’une des deux.
row-edge_unreadable = La position d’un front n’est pas un nombre utilisable. Corrigez-la.
row-no_delay = Le retard manque. Lisez les deux fronts sur l’écran.
row-time_base_unreadable = La base de temps n’est pas un nombre utilisable. Corrigez-la.
row-no_time_base = La base de temps manque. Saisissez le temps par division de l’écran.
edges-missing = Il manque un front. Lisez les deux : le retard est la distance entre eux sur l’écran.
edges-unpaired = { $a ->
    [one] { $a } lecture du front A et { $b } du front B
   *[other] { $a } lectures du front A et { $b } du front B
  } ne peuvent pas être appariées. Saisissez autant de lectures pour l’un que pour l’autre, ou une seule pour l’un des deux.
edges-no_mark = Le front { $edge } n’est pas marqué. Marquez-le à la moitié de sa propre hauteur.
edges-off_plane = La marque { $n } du front { $edge } est hors du plan de l’écran. Marquez-le de nouveau.
edges-no_repeats = Avec une seule marque sur chaque front, il n’y a pas de dispersion. Marquez les fronts de nouveau, ou déclarez une incertitude en pixels.
edges-not_between = Le front { $edge } n’est pas marqué entre sa ligne de base et son sommet. Marquez la ligne de base là où la trace la quitte, et le sommet là où elle l’atteint : plus tard, et à une autre hauteur.
edges-uncertainty = L’incertitude d’une marque doit être de zéro pixel ou plus.
marks-no_grid = La grille de sa photo n’est pas encore marquée. Marquez les quatre coins de la grille.
grid-no_divisions = Les coins de la grille sont à moins d’une division l’un de l’autre. Déclarez combien de divisions les séparent.
plane-mark = { $n } (colonne { $column }, rangée { $row })
plane-too_few = { $got ->
    [one] { $got } marque de coin ne suffit pas.
   *[other] { $got } marques de coin ne suffisent pas.
  } Marquez les quatre coins de la grille.
plane-not_finite = Une coordonnée de la marque de coin { $mark } n’est pas un nombre. Placez-la de nouveau.
plane-uncertainty = L’incertitude d’une marque de coin doit être de zéro pixel ou plus.
plane-same_place = Les marques de coin { $first } et { $second } sont au même point de la photo. Placez l’une d’elles sur son propre croisement.
plane-same_crossing = Les marques de coin { $first } et { $second } désignent le même croisement de la grille. Donnez à l’une d’elles une autre colonne ou une autre rangée.
plane-on_one_line = Les marques de coin { $marks } sont alignées sur la photo. Déplacez l’une d’elles, pour que les quatre délimitent une surface.
plane-crossings_on_one_line = Les marques de coin { $marks } désignent des croisements alignés de la grille. Utilisez les coins d’un rectangle.
plane-crossed = Le contour des marques de coin se croise lui-même. Échangez les marques { $first } et { $second }.
plane-out_of_place = La marque de coin { $mark } ne peut pas être là, d’après les autres. Placez-la sur son croisement.
plane-mirrored = Les marques de coin font le tour de l’écran dans le mauvais sens, comme dans un miroir. Les colonnes se comptent le long de l’axe des temps, les rangées vers le bas. Marquez les coins dans leur ordre.
plane-undetermined = Les marques de coin ne déterminent pas de plan. Écartez-les davantage.
traces-not_measured = Ses traces n’ont pas été mesurées avec la datation choisie. Mesurez-les de nouveau.
traces-no_delay = Ses traces ne donnent pas de retard : { $why }
traces-unreadable = Le retard conservé avec ses traces n’est pas un nombre utilisable. Mesurez les traces de nouveau.

## Une modification qui est refusée

edit-no_row = Il n’y a pas de ligne numéro { $n }. La modification a été laissée de côté.
edit-no_rail = Il n’y a pas de rail numéro { $n }. La modification a été laissée de côté.
edit-no_setting = Il n’y a pas de réglage de la base de temps numéro { $n }. La modification a été laissée de côté.
edit-no_shared = Il n’y a pas de composante de l’incertitude numéro { $n }. La modification a été laissée de côté.
edit-no_position = Il n’y a pas de position prévue numéro { $n }. La modification a été laissée de côté.
edit-no_grid = Il n’y a pas de grille marquée numéro { $n }. La modification a été laissée de côté.
edit-taken = Le numéro { $n } est déjà utilisé. Une nouvelle ligne ou un nouveau rail doit avoir son propre numéro.
edit-too_high = Le numéro { $n } est trop élevé pour une ligne ou un rail. Le plus élevé est { $most }.
edit-no_reason = La ligne numéro { $n } n’a pas été écartée. Donnez d’abord la raison.
edit-no_name = Saisissez d’abord le nom de la personne qui a lu les précautions.
edit-not_in_group = Annuler, rétablir, le sceau et la distribution ne peuvent pas faire partie d’un groupe de modifications.
edit-no_second_seal = Le résultat a déjà été scellé une fois, ou le sceau est incomplet. Il est resté inchangé.
edit-no_seal = Il n’y a pas de sceau fermé à ouvrir.
edit-nothing_to_undo = Il n’y a plus rien à annuler.
edit-nothing_to_redo = Il n’y a plus rien à rétablir.

## Fichiers qui ne peuvent pas être ouverts

file-not_json = Ce fichier n’est pas un cahier complet : il est illisible à partir de la ligne { $line }, colonne { $column }. Téléchargez de nouveau le fichier.
file-foreign = Ce fichier n’est pas un cahier de ce programme. Choisissez un fichier de cahier ou une archive téléchargés d’un cahier.
file-later_format = Ce cahier a été fait par une version ultérieure de cette page, au format { $format }. Il est resté inchangé. Ouvrez-le avec cette version.
file-later_name = Ce cahier a été fait par une version ultérieure de cette page, qui connaît « { $name } ». Il est resté inchangé. Ouvrez-le avec cette version.
file-form = Quelque chose dans ce fichier de cahier ne suit pas son format, à la ligne { $line }, colonne { $column }. Téléchargez de nouveau le fichier.
file-bad_entry = L’entrée { $n } de l’historique du cahier est inutilisable. { $why }
bundle-notebook = « notebook.json », dans cette archive, ne peut pas être ouvert. { $why }
bundle-not_zip = Ce fichier n’est pas une archive de cahier : ce n’est pas un zip. Choisissez le .zip téléchargé depuis un cahier.
bundle-cut_short = Cette archive est tronquée : la table de ses entrées manque. Téléchargez de nouveau le fichier.
bundle-damaged = Cette archive est endommagée. Téléchargez de nouveau le fichier.
bundle-damaged_entry = « { $entry } », dans cette archive, est endommagé. Téléchargez de nouveau le fichier.
bundle-too_many_entries = Cette archive contient { $found } entrées, plus que la limite de { $limit }. Elle ne vient pas d’un cahier : ne l’ouvrez pas.
bundle-entry_too_large = « { $entry } » dépasse { $limit } octets une fois décompressé. Si c’est une photo ou un enregistrement, prenez-en un plus petit. Sinon, n’ouvrez pas ce fichier.
bundle-too_large = Avec « { $entry } », cette archive dépasse { $limit } octets en tout une fois décompressée. Laissez de côté des photos ou des enregistrements. S’il n’y en a pas, n’ouvrez pas ce fichier.
bundle-too_tight = « { $entry } » décompressé dépasse { $ratio } fois sa taille compressée, ce qu’aucun contenu réel ne fait. N’ouvrez pas ce fichier.
bundle-bad_name = Le nom d’entrée « { $entry } » est refusé : il pourrait mener hors de son dossier, ou certains systèmes ne peuvent pas le conserver. Téléchargez de nouveau le fichier, ou décompressez-le et choisissez les fichiers qu’il contenait.
bundle-duplicate = Cette archive contient deux fois « { $entry } » (l’autre est « { $other } »). Téléchargez de nouveau le fichier.
bundle-encrypted = « { $entry } » est chiffré. Décompressez l’archive avec son mot de passe et compressez-la de nouveau sans mot de passe.
bundle-method = « { $entry } » est compressé par une méthode qui n’est pas lue ici. Compressez de nouveau l’archive en zip ordinaire (deflate).
bundle-no_contents = Ce zip n’est pas une archive de cahier : sa liste « contents.json » manque ou est illisible. Choisissez le .zip tel qu’il a été téléchargé depuis un cahier.
bundle-later = Cette archive a été faite par une version ultérieure de cette page (format { $found } ; ici, on lit jusqu’au format { $known }). Elle est restée inchangée. Ouvrez-la avec cette version.
bundle-unlisted = « { $entry } » n’est pas dans la liste « contents.json » de l’archive : il a été ajouté plus tard. Retirez-le, ou téléchargez de nouveau le fichier.
bundle-missing = « { $entry } » manque dans cette archive. Téléchargez de nouveau le fichier.
bundle-changed = « { $entry } » a été modifié après la création de l’archive : sa taille ou son SHA-256 n’est pas celui de « contents.json ». Téléchargez de nouveau le fichier.
bundle-misnamed = « { $entry } » est une autre photo que ne le dit son nom : son SHA-256 diffère. Téléchargez de nouveau le fichier.
table-ragged = L’enregistrement { $record } du tableau a { $found } cellules, le premier en a { $expected }. Complétez les cellules manquantes, ou supprimez celles en trop.
table-kind = « { $kind } » n’est pas un format de tableau. Prenez CSV, LaTeX ou un tableau à barres verticales.
chart-too_small = Le graphique a { $width } × { $height } pixels ; il lui en faut au moins { $least_width } × { $least_height }. Agrandissez-le.
chart-surface = Le navigateur n’a pas permis de dessiner. Rechargez la page, ou prenez un navigateur plus récent.
shelf-full = Le stockage du navigateur pour cette page est plein. Rien de ce qui y était n’a été modifié. Téléchargez maintenant l’archive de ce cahier, puis supprimez définitivement des cahiers.
shelf-refused = Le navigateur n’a pas conservé le cahier. Rien de ce qui y était n’a été modifié. Téléchargez maintenant l’archive de ce cahier.

## Photos qui ne peuvent pas être employées

size-unnamed = La photo
size-unknown = { $file } : ce n’est pas une image au format JPEG, PNG, WebP ou GIF. Enregistrez-la en JPEG ou en PNG.
size-heif = { $file } : une photo au format HEIF (HEIC), que peu de navigateurs savent lire. Enregistrez-la en JPEG, ou réglez l’appareil sur JPEG.
size-cut = { $file } : le fichier s’arrête dans son en-tête. Copiez de nouveau le fichier depuis l’appareil.
size-damaged = { $file } : le fichier est endommagé, son en-tête ne donne pas les dimensions. Copiez de nouveau le fichier depuis l’appareil.
size-too_large = { $file } : une photo de { $width } × { $height } pixels est trop grande. La limite est de { $most } millions de pixels. Réduisez-la, ou réglez l’appareil sur des photos plus petites.
picture-bytes = La photo ne remplit pas { $width } × { $height } pixels. Chargez-la de nouveau.
picture-too_small = Une photo de { $width } × { $height } pixels est trop petite pour montrer une grille. Prenez-en une plus grande.
propose-divisions = Une grille de { $columns } × { $rows } divisions ne peut pas être cherchée. Déclarez de { $least } à { $most } divisions dans chaque sens.
propose-no_grid = Aucune grille de { $columns } × { $rows } divisions n’a été trouvée sur cette photo.

## Fichiers de traces qui ne peuvent pas être lus

read-file = { $file } : { $why }
read-empty = le fichier est vide. Enregistrez la trace de nouveau.
read-binary = l’octet { $at } n’est pas du texte, c’est donc un fichier binaire. Enregistrez la trace comme texte à colonnes séparées.
read-no_columns = aucune colonne de nombres n’a été trouvée. Choisissez le séparateur de colonnes et le séparateur décimal, ou enregistrez la trace comme texte à colonnes séparées.
read-no_time = il n’y a ni colonne de temps ni intervalle d’échantillonnage. Déclarez l’intervalle.
read-no_channel = aucune colonne n’est désignée comme trace. Indiquez laquelle contient la tension.
read-few_rows =
    { $rows ->
        [one] il n’y a que { $rows } ligne d’échantillons ; il en faut au moins { $needed }. Vérifiez la première ligne d’échantillons.
       *[other] il n’y a que { $rows } lignes d’échantillons ; il en faut au moins { $needed }. Vérifiez la première ligne d’échantillons.
    }
read-missing_field = la ligne { $line } s’arrête avant la colonne { $column }. Le fichier est peut-être tronqué, ou le séparateur de colonnes est un autre.
read-not_a_number = ligne { $line }, colonne { $column } : « { $found } » n’est pas un nombre. Vérifiez le séparateur décimal et la première ligne d’échantillons.
read-no_value = ligne { $line }, colonne { $column } : « { $found } » désigne un échantillon sans valeur, par exemple un dépassement. Enregistrez la trace de nouveau avec un calibre plus grand.
read-unequal = ligne { $line } : le temps est { $found } ns là où des pas égaux de { $step } ns donnent { $expected } ns. Cherchez une ligne manquante ou répétée. Les pas peuvent différer de moins d’un demi-pas, si les temps ont assez de chiffres pour dire de combien.
read-other_times = la colonne { $column } a d’autres temps que la première colonne de temps : les traces n’ont pas été échantillonnées ensemble. Enregistrez chacune dans son propre fichier.
read-no_advance = le temps n’augmente pas de la première ligne d’échantillons (ligne { $first }) à la dernière (ligne { $last }). Vérifiez quelle colonne est le temps.
reading-none = Aucun fichier de traces n’est choisi. Choisissez-en un qui contient les deux traces, ou un pour chaque détecteur.
reading-third = { $file } : c’est un troisième fichier de traces. Choisissez-en un qui contient les deux traces, ou un pour chaque détecteur.
reading-one = { $file } : ce fichier ne contient qu’une trace. Ajoutez le fichier avec la trace de l’autre détecteur.
reading-lacks_a = { $file } : aucune colonne n’est désignée comme la trace du détecteur A. Indiquez laquelle la contient.
reading-same = { $file } : les deux traces ont exactement les mêmes échantillons, comme si l’une avait été enregistrée deux fois. Enregistrez celle de chaque détecteur.
reading-apart = { $file } : ce fichier ne dit pas à quel instant son premier échantillon a été pris, ses fronts ne peuvent donc pas être comparés à ceux de { $other }. Enregistrez les deux traces de la même façon, avec une colonne de temps.
reading-lacks_b = { $file } : aucune colonne n’est désignée comme la trace du détecteur B. Indiquez laquelle la contient.

## Traces sans retard

trace-refused = { $file }, trace { $trace } : { $why }
trace-few_samples =
    { $samples ->
        [one] { $samples } échantillon ne suffit pas pour une ligne de base et un front ; il en faut au moins { $needed }. Enregistrez plus d’échantillons.
       *[other] { $samples } échantillons ne suffisent pas pour une ligne de base et un front ; il en faut au moins { $needed }. Enregistrez plus d’échantillons.
    }
trace-not_finite = l’échantillon { $sample } n’a pas de valeur finie. Enregistrez la trace de nouveau.
trace-step = l’intervalle d’échantillonnage est { $step } ns ; il doit être supérieur à zéro. Corrigez-le.
trace-no_pulse = la trace ne montre pas d’impulsion. Elle monte de { $height } V au-dessus de sa ligne de base (le plus haut à l’échantillon { $sample }) ; une impulsion monte de plus de 4 fois le bruit, ici { $noise } V. Vérifiez quelle colonne est la trace, ou moyennez plus d’impulsions.
trace-clipped =
    { $samples ->
        [one] elle est écrêtée. À partir de l’échantillon { $sample }, le sommet est plat à { $limit } V sur { $samples } échantillon. Enregistrez avec un calibre plus grand.
       *[other] elle est écrêtée. À partir de l’échantillon { $sample }, le sommet est plat à { $limit } V sur { $samples } échantillons. Enregistrez avec un calibre plus grand.
    }
trace-no_baseline = il n’y a pas de ligne de base calme avant l’impulsion, qui semble commencer à l’échantillon { $sample } : l’enregistrement commence trop tard, ou par un pic ou une autre impulsion. Enregistrez plus de temps avant le déclenchement.
trace-no_top = l’enregistrement s’arrête à l’échantillon { $last }, avant le sommet de l’impulsion. Enregistrez plus de temps après le déclenchement.
trace-level = un seuil à { $level } V au-dessus de la ligne de base n’est pas sur le front. Ici, il doit être entre { $lowest } V et { $highest } V.
trace-fraction = une fraction de { $fraction } n’est pas sur le front. Elle doit être entre 10 % et 90 %.
trace-hidden = le bruit cache le franchissement près de l’échantillon { $sample } : son incertitude de { $u } ns dépasse le quart du temps de montée de { $rise } ns. Moyennez plus d’impulsions.
trace-few_on_edge =
    { $samples ->
        [one] { $samples } seul échantillon se trouve sur le front près de l’échantillon { $sample } ; il en faut { $needed } pour une droite. Échantillonnez plus vite, ou prenez une fraction constante.
       *[other] { $samples } échantillons seulement se trouvent sur le front près de l’échantillon { $sample } ; il en faut { $needed } pour une droite. Échantillonnez plus vite, ou prenez une fraction constante.
    }
trace-unequal_steps = les intervalles d’échantillonnage des deux traces sont { $first } ns et { $second } ns. L’intercorrélation en demande d’égaux. Choisissez une autre datation des fronts.
trace-no_lag = les deux fronts ne se superposent pas près de l’échantillon { $sample } : leurs formes diffèrent trop, ou l’enregistrement s’arrête. Choisissez une autre datation des fronts.

## Composantes de l’incertitude et matrices qui ne peuvent pas être employées

shared-no_degrees = La loi de Student demande ses degrés de liberté. Saisissez-les, ou choisissez une autre loi.
shared-no_rows = Cette composante ne concerne aucune ligne de la droite. Choisissez d’autres lignes, ou supprimez-la.
covariance-shape = { $n ->
    [one] La matrice de covariance de { $n } ligne du tableau demande un seul nombre.
   *[other] La matrice de covariance de { $n } lignes du tableau demande { $n } lignes de { $n } nombres.
  }
covariance-own_uncertainty = Une ligne de cette matrice a une incertitude propre. Effacez cette incertitude, ou la matrice.
covariance-row_twice = Une ligne figure deux fois dans cette matrice. Supprimez l’une des deux.
covariance-not_direct = Une covariance demande que distance et retard soient écrits dans la ligne.

## Pourquoi il n’y a pas de droite ou pas de résultat

rail-named = « { $name } »
refusal-marked = { $refusal } Ces champs ne peuvent pas être utilisés tels quels : { $fields }.
refusal-too_few_rows = { $got ->
    [0] Aucune ligne n’a encore à la fois une distance et un retard.
    [one] Une ligne ne suffit pas pour une droite.
   *[other] { $got } lignes ne suffisent pas ici.
  } Il en faut au moins { $needed }, à des positions différentes ; cinq ou plus valent mieux.
refusal-all_positions_equal = Toutes les lignes ont la même distance : la droite n’a donc pas de pente. Faites des lectures à d’autres positions.
refusal-zero_uncertainty = { $n ->
    [one] La ligne { $rows } déclare
   *[other] Les lignes { $rows } déclarent
  } une incertitude nulle pour la distance et pour le retard. Aucune lecture n’est exacte : déclarez son incertitude.
refusal-indefinite = { $n ->
    [one] La ligne { $rows } a
   *[other] Les lignes { $rows } ont
  } une covariance impossible : une variance serait négative. Vérifiez la matrice.
refusal-singular = Avec cette matrice, une combinaison des lignes { $rows } n’a aucune incertitude. Vérifiez la matrice, ou déclarez à part la composante commune.
refusal-not_symmetric = Les lignes { $rows } ont deux covariances différentes dans la matrice. Écrivez le même nombre aux deux endroits.
refusal-not_finite = La ligne { $rows } donne un nombre trop grand pour le calcul. Vérifiez sa distance, son retard, leurs incertitudes et leurs unités.
refusal-negative_uncertainty = { $n ->
    [one] La ligne { $rows } déclare
   *[other] Les lignes { $rows } déclarent
  } une incertitude inférieure à zéro. Saisissez zéro ou plus.
refusal-undetermined_rail = Ces lectures ne déterminent pas la position du rail { $rails }. Faites des lectures des deux côtés de son raccord, et à deux distances ou plus d’un côté ; ou déclarez la position.
refusal-undetermined_slope = La pente ne peut pas être séparée de la position ajustée du rail { $rails }. Faites des lectures à deux distances ou plus sur un même rail, ou déclarez la position.
refusal-out_of_range = Les distances, les retards ou les incertitudes sont trop grands ou trop petits pour le calcul. Vérifiez leurs unités.
refusal-no_convergence = Aucune pente ne convient mieux qu’une autre : dans leurs incertitudes, toutes les lignes pourraient avoir la même distance. Faites des lectures plus éloignées les unes des autres, et vérifiez les incertitudes des distances.
refusal-length_mismatch = Les lignes et les incertitudes ne sont pas en même nombre. C’est un défaut de cette page, non de vos lectures. Gardez l’archive de ce cahier et signalez le défaut.
refusal-some_unstated = { $n ->
    [one] Il manque à la ligne { $rows }
   *[other] Il manque aux lignes { $rows }
  } une incertitude sur la distance ou sur le retard que d’autres lignes déclarent. Déclarez-la pour chaque ligne, ou pour aucune.
refusal-slope_not_positive = Le retard n’augmente pas avec la distance : il n’y a donc pas de vitesse. Vérifiez le sens des règles, et si les fronts A et B ont été échangés.
refusal-no_uncertainty = Deux lignes donnent une pente, mais pas d’incertitude. Ajoutez des lignes, ou déclarez l’incertitude de chacune.
refusal-no_air_index = L’indice de réfraction de l’air n’est pas connu pour les valeurs données dans « Montage ». Corrigez-les là.
refusal-no_scatter = Les lignes sont exactement sur une droite : il n’y a donc pas de dispersion. Déclarez l’incertitude de chaque ligne.
marked-bench = « { $field } »
marked-rail = « { $field } » du rail « { $rail } »
marked-splice = « { $field } », position du rail « { $rail } »
marked-setting = réglage { $n } de la base de temps
marked-shared = autre composante de l’incertitude { $n }
marked-covariance-distances = la matrice de covariance des distances
marked-covariance-delays = la matrice de covariance des retards
marked-covariance-both = les covariances de la distance et du retard
budget-few_degrees = { $got } degrés de liberté ne suffisent pas pour un facteur d’élargissement : il en faut au moins 1. Vérifiez les degrés de liberté déclarés des composantes.
budget-no_probability = Une probabilité de couverture est comprise entre 0 et 1 ; { $got } ne l’est pas.
trials-no_seed = « { $text } » n’est pas une graine. Écrivez un nombre entier de 19 chiffres au plus, ou laissez le champ vide.
trials-no_count = « { $text } » n’est pas un nombre d’essais. Écrivez un nombre entier de { $least } à { $most }, ou laissez le champ vide.
trials-no_value = { $without } essais sur { $trials } n’ont pas donné de valeur : leur loi ne peut pas être résumée. Des incertitudes plus petites ou davantage de lectures aideraient.
trials-too_few = Cet intervalle élargi demande au moins { $needed } essais ; il y en a { $got }.
trials-out_of_range = Les valeurs des essais sont trop grandes pour le calcul. Vérifiez les unités.

## Pourquoi rien n’est prévu

plan-no_rails = Aucun rail n’est encore décrit. Décrivez-en un dans « Montage ».
plan-no_place = Aucun rail ne peut encore servir au plan. Saisissez sa première et sa dernière graduation dans « Montage », et déclarez sa position.
plan-too_few = Prévoyez deux positions ou plus, éloignées : une droite en a besoin.
plan-no_uncertainty = L’incertitude de ces lignes n’est pas connue. Déclarez dans « Montage » avec quelle finesse les fronts et les règles sont lus.
plan-no_time_base = « { $text } » n’est pas un temps par division. Écrivez un nombre supérieur à zéro, en ns.
plan-no_repeats = « { $text } » n’est pas un nombre de lignes. Écrivez un nombre entier de 1 à { $most }.
plan-no_rehearsal = Aucun entraînement n’est encore possible avec ce montage. { $why } Changez-le dans « Montage ».

## Les points des graphiques, en tableau

plot-keys-line = Retard en fonction de la distance ; gauche et droite vont de lecture en lecture, Entrée à sa ligne ; plus et moins changent l’échelle, les flèches déplacent alors, 0 montre tout
plot-keys-residuals = Résidus normalisés ; gauche et droite vont de lecture en lecture, Entrée à sa ligne ; plus et moins changent l’échelle, les flèches déplacent alors, 0 montre tout
plot-closer = Agrandir
plot-wider = Réduire
plot-whole = Tout
plot-table = Le dessin en tableau
points-title = Les points en tableau
points-hint = Les touches ↑ et ↓ vont de point en point, Entrée va à la lecture.
points-point = Ligne { $n } : distance { $distance } m, retard { $delay } ns, résidu normalisé { $residual }
points-struck = Ligne { $n } : distance { $distance } m, retard { $delay } ns, écartée : { $reason }

## La série rejouée

replay = Revoir le déroulement
replay-hint = Le cahier tel qu’il était après chaque étape de son historique. Regarder ne change rien.
replay-step = Étape { $n } sur { $all }
replay-step-name = Étape
replay-row = ligne { $n } : { $texts }
replay-else = autre entrée
replay-play = Démarrer
replay-pause = Pause
replay-back = Étape précédente
replay-on = Étape suivante

## L’historique, entrée par entrée

history-hint = Ce qui a été saisi, le plus récent d’abord, avec l’heure de l’ordinateur sur lequel la saisie a été faite. Les lignes portent leur numéro actuel. Le numéro d’une entrée ouvre le déroulement à cet endroit.
history-only = Montrer
history-all = toutes les entrées
history-no-row = montage, textes et choix
history-more = Montrer la suite
history-take = Télécharger l’historique (CSV)
history-columns-n = N°
history-columns-at = Heure
history-columns-where = Où
history-columns-from = Avant
history-columns-to = Après
history-columns-digest = Empreinte
history-replay = Revoir à partir de l’entrée { $n }
history-no-time = Aucune heure n’a été enregistrée
history-begun = ligne commencée
history-added = ajout
history-removed = suppression
history-struck = écartée : { $reason }
history-restored = réintégrée
history-row-gone = une ligne qui n’existe plus
history-undo = entrée { $n } annulée
history-redo = entrée { $n } rétablie
history-merged =
    { $n ->
        [one] historique de { $n } entrée, empreinte { $digest }
       *[other] historique de { $n } entrées, empreinte { $digest }
    }
history-digests-coming = Les empreintes sont en cours de calcul…
history-proves = Empreinte de tout l’historique : { $digest }. Le fichier indique celle de chaque entrée : le SHA-256 de l’empreinte précédente et de l’entrée elle-même. Si une entrée est modifiée, déplacée ou omise plus tard, son empreinte et toutes les suivantes changent : quiconque en a noté une le voit. Elle ne montre pas qui a saisi quoi, ni si l’horloge était juste. Qui modifie un fichier peut calculer de nouvelles empreintes.

## Le cahier du binôme, fusionné

merge-title = Fusionner le cahier du binôme
merge-hint = Reprend ce que votre binôme a saisi dans un cahier issu du même document distribué. Vous le voyez d’abord, et choisissez là où vous différez.
merge-entries =
    { $n ->
        [one] { $n } entrée
       *[other] { $n } entrées
    }
merge-taken = Modifié par votre binôme seul, et repris : { $rows ->
        [0] aucune nouvelle ligne
        [one] une nouvelle ligne
       *[other] { $rows } nouvelles lignes
    }, { $n ->
        [0] rien d’autre
        [one] une autre modification
       *[other] { $n } autres modifications
    }
merge-more =
    { $n ->
        [one] Une autre modification n’est pas listée ici.
       *[other] { $n } autres modifications ne sont pas listées ici.
    }
merge-parted = Après l’entrée { $n }, son historique diffère de celui qui a été fusionné avant : quelqu’un est reparti d’un fichier plus ancien, ou a modifié une entrée. Les lignes saisies après cette entrée sont reprises comme nouvelles.
merge-behind = Votre binôme a fusionné une autre version de votre cahier : après l’entrée { $n }, son historique diffère de celui-ci. Ce qui y a été saisi compte comme venant de votre binôme.
merge-kept =
    { $n ->
        [one] Une ligne d’ici n’a pas de base de temps à elle. Celle qu’elle utilise maintenant y est inscrite, car la fusion pourrait la changer.
       *[other] { $n } lignes d’ici n’ont pas de base de temps à elles. Celle qu’elles utilisent maintenant y est inscrite, car la fusion pourrait la changer.
    }
merge-astray =
    { $n ->
        [one] Vérifiez le rail de la ligne { $rows } après la fusion : un seul des deux cahiers l’a, ou deux rails portent son nom, et la ligne peut alors être lue sur un autre rail de ce nom.
       *[other] Vérifiez les rails des lignes { $rows } après la fusion : un seul des deux cahiers les a, ou deux rails portent le même nom, et les lignes peuvent alors être lues sur d’autres rails de ce nom.
    }
merge-astray-planned =
    { $n ->
        [one] Vérifiez le rail de la position prévue { $positions } après la fusion : elle peut être prévue sur un autre rail de ce nom.
       *[other] Vérifiez les rails des positions prévues { $positions } après la fusion : elles peuvent être prévues sur d’autres rails de ce nom.
    }
merge-differ = Vos cahiers diffèrent en ce qui suit. Choisissez chaque fois ce que le vôtre garde.
merge-agree = Rien n’a été modifié différemment dans les deux cahiers.
merge-clash = Différence { $n } sur { $all }
merge-ours = Dans ce cahier
merge-theirs = Chez votre binôme
merge-choices-ours = Garder ce qui est ici
merge-choices-theirs = Prendre ce qui est chez mon binôme
merge-choices-both = Garder les deux : la ligne de mon binôme s’ajoute à la fin
merge-rest = Toutes les différences sans choix :
merge-empty = (vide)
merge-unlike = diffère par les marques ou les choix
merge-left = Ne sont pas fusionnés : le numéro d’étudiant, le nom de ceux qui ont lu les précautions, et le sceau. Ce que vous ne prenez pas reste dans le fichier de votre binôme.
merge-open =
    { $n ->
        [one] Une différence est encore sans choix.
       *[other] { $n } différences sont encore sans choix.
    }
merge-confirm = Fusionner
merge-done = Le cahier de votre binôme est fusionné.
merge-one = Plusieurs fichiers : choisissez ou déposez un seul cahier à la fois.
merge-changed = Pas de fusion : ce cahier a changé entre-temps. Choisissez de nouveau le fichier de votre binôme.
merge-refused = { $name } n’a pas été fusionné, et rien n’a été modifié. { $why }
merge-refused-other = Il n’est pas issu du même document distribué que ce cahier : leurs historiques commencent autrement.
merge-refused-changed = Une des { $n } premières entrées de son historique, celles du document distribué, n’est plus ce qu’elle était : les empreintes ne concordent pas. Une entrée a été modifiée, ou c’est un autre jeu de données du même document distribué. Demandez à votre binôme le fichier tel qu’il a été téléchargé.
merge-refused-early = Un des deux cahiers a été fusionné avec une version antérieure de cette page, qui gardait trop peu pour dire ce que les deux ont en commun. Annulez cette fusion, ou fusionnez le fichier d’avant.
merge-refused-mark = Les deux cahiers n’ont pas le même séparateur décimal. Choisissez d’abord le même dans les deux.
merge-refused-nothing = Tout ce qu’il contient est déjà dans ce cahier.

## La liste des touches

keys = Touches
keys-everywhere = Partout
keys-readings = Dans les lectures
keys-points = Dans le tableau des points
keys-plots = Sur les graphiques de la droite et des résidus
keys-plan = Sur une position prévue
keys-marks = Sur une marque de photo
keys-traces = Sur un graphique de deux traces
keys-press-undo = Ctrl + Z
keys-does-undo = Annuler
keys-press-redo = Ctrl + Y, ou Ctrl + Maj + Z
keys-does-redo = Rétablir
keys-press-leaf = Alt + Page suiv., Alt + Page préc.
keys-does-leaf = La partie suivante du cahier (banc, lectures, droite…), la précédente
keys-press-list = ?
keys-does-list = Cette liste, quand aucun champ n’est actif
keys-press-next = Entrée
keys-does-next = La même cellule de la ligne suivante ; après la dernière, une nouvelle ligne, à la première cellule sans suggestion
keys-press-before = Maj + Entrée
keys-does-before = La même cellule de la ligne précédente
keys-press-up-down = ↑ ↓
keys-does-up-down = La cellule du dessus, celle du dessous
keys-press-tab = Tab
keys-does-tab = La cellule suivante
keys-press-beside = ← →, Origine, Fin
keys-does-beside = La cellule d’à côté, la première, la dernière, tant que tout le texte de la cellule est sélectionné
keys-press-edit = F2
keys-does-edit = Placer le curseur dans le texte ; encore une fois : tout sélectionner
keys-press-point = ↑ ↓
keys-does-point = Le point du dessus, celui du dessous
keys-press-ends = Origine, Fin
keys-does-ends = Le premier point, le dernier
keys-press-to-row = Entrée
keys-does-to-row = Aller à sa ligne dans les lectures
keys-press-reading = ← →
keys-does-reading = Aller de lecture en lecture, tant que tout est montré
keys-press-closer = + −
keys-does-closer = Agrandir, réduire
keys-press-move = ← → ↑ ↓
keys-does-move = Déplacer ce qui est montré, une fois agrandi
keys-press-all = 0, Origine
keys-does-all = Tout montrer
keys-press-untell = Échap
keys-does-untell = Fermer l’indication sur un point
keys-press-position = ← →
keys-does-position = La déplacer un peu
keys-press-far = Page préc., Page suiv.
keys-does-far = La déplacer dix fois plus loin
keys-press-give-up = Échap
keys-does-give-up = La remettre en place
keys-press-mark = ← → ↑ ↓
keys-does-mark = La déplacer d’un pixel
keys-press-fine = Maj et une flèche
keys-does-fine = La déplacer d’un dixième de pixel
keys-press-coarse = Alt et une flèche
keys-does-coarse = La déplacer de dix pixels
keys-press-accept = Entrée
keys-does-accept = Accepter les marques
keys-press-zoom = + −, ou ↑ ↓
keys-does-zoom = Agrandir, réduire
keys-press-aside = ← →
keys-does-aside = Se déplacer le long de l’axe des temps
keys-press-whole = 0
keys-does-whole = Montrer l’impulsion entière

## L’affichage mural

wall = Affichage mural
wall-line = Droite
wall-bench = Banc
wall-result = Résultat
wall-row = Ligne { $n } : d = { $d } m, Δt = { $delay } ns
wall-blocked = Le navigateur n’a pas ouvert de deuxième fenêtre. Autorisez les fenêtres pop-up pour cette page, puis réessayez.

## Un message qui propose d’annuler

undone = Annulé.
undone-at = Annulé : { $where }
redone = Rétabli.
redone-at = Rétabli : { $where }

## Un document distribué

handout-title = Distribuer à une classe
handout-hint = Faites de ce cahier un document à distribuer : une copie où vous fixez ce que les étudiants ne peuvent pas changer, et où vous demandez ce qu’il vous faut. Votre cahier reste tel qu’il est.
handout-rules = Ce qui est fixé et ce qui est demandé
handout-rules-hint = Libre : les étudiants peuvent le modifier. Fixé : reste tel qu’il est maintenant ; ni modification ni annulation ne l’atteint. Demandé : sans cela, le cahier compte comme incomplet. Les positions, bases de temps et lectures sont fixées dans les lignes qui se trouvent ici maintenant. Les règles locales et le contact sont toujours fixés.
handout-usual = Appliquer les choix habituels
handout-rules-open = libre
handout-rules-fixed = fixé
handout-rules-needed = demandé
handout-pieces-title = Titre
handout-pieces-cautions = Précautions, lues et signées d’un nom
handout-pieces-source = Chariot et source
handout-pieces-instruments = Instruments, câbles et déclenchement
handout-pieces-rails = Rails
handout-pieces-screen = Écran et lecture des fronts
handout-pieces-time_bases = Bases de temps
handout-pieces-air = Air
handout-pieces-positions = Positions
handout-pieces-readings = Lectures
handout-pieces-evidence = Photos et traces
handout-pieces-uncertainty = Autres composantes de l’incertitude
handout-pieces-line = Droite et lignes écartées
handout-pieces-result = Résultat et sa probabilité de couverture
handout-pieces-people = Noms
handout-pieces-student_number = Numéro d’étudiant
handout-pieces-group = Groupe
handout-pieces-date = Date
handout-pieces-aim = But
handout-pieces-method = Méthode
handout-pieces-discussion = Discussion
handout-pieces-answers = Réponses aux questions
handout-tasks-title = Textes et questions
handout-tasks-hint = Chacun se trouve au début de la section dont il parle. *Italique*, **gras**, listes, citations, code et liens s’écrivent comme en CommonMark.
handout-add = Ajouter un texte ou une question
handout-at = À propos de
handout-asks = Demande
handout-asks-nothing = rien : à lire
handout-asks-words = une réponse en mots
handout-asks-number = un nombre
handout-text = Texte
handout-remove = Retirer ce texte
handout-sealed = Commencer avec un résultat scellé
handout-take = Télécharger le document
handout-post = Façons de le distribuer
handout-take-hint = Un document à distribuer contient ce qui se trouve maintenant dans le cahier, avec l’historique de ses lectures et réglages, mais sans votre nom, vos réponses, les formulations antérieures des textes, remarques et questions, et ce que vous avez annulé. Rien n’est envoyé : vous le remettez vous-même. Ouvert de nouveau sur le même ordinateur, il ramène au cahier commencé à partir de lui.
handout-rehearsal = Ce cahier est un entraînement : quiconque le reçoit peut en montrer les valeurs vraies sous « Plan de mesure ». Pour des valeurs qui restent cachées, préparez des jeux de données ci-dessous.
handout-file-title = Sous forme de fichier
handout-file-hint = Pour une page de cours ou un dossier partagé. Il contient aussi photos et traces. Les étudiants l’ouvrent sur cette page, par Cahiers, puis « { $open } ».
handout-address = Placé à côté de cette page sur son site, il s’ouvre aussi par cette adresse : { $address }
handout-link-title = Sous forme de lien
handout-link-hint = Pour un courriel ou un message. Le lien contient lui-même le document ; le site n’en reçoit rien. Il y a place pour des textes et des lectures, non pour des photos et des traces.
handout-link = Copier le lien
handout-link-size = Le lien a { $n } octets ; la limite est de { $most }.
handout-link-too_long = Le lien aurait { $n } octets. Certains programmes coupent les liens de plus de { $most }. Raccourcissez les textes ou enlevez des lignes, ou distribuez plutôt un seul fichier HTML.
handout-link-files = Aucun lien ne peut contenir les photos ou les traces de ce cahier. Distribuez plutôt le fichier ou un seul fichier HTML.
handout-link-no_site = Cette page a été ouverte d’un fichier : ses liens ne mènent nulle part sur d’autres ordinateurs. Ouvrez-la sur un site, ou distribuez plutôt le fichier ou un seul fichier HTML.
handout-page-title = Sous forme d’un seul fichier HTML
handout-page-hint = Pour une clé USB, une pièce jointe ou une salle sans réseau. Il contient ce programme et le document, environ 1,3 Mo, et s’ouvre d’un double clic.
handout-page = Télécharger un seul fichier HTML
handout-no-program = « { $name } », le programme en un seul fichier, n’a pas pu être chargé à côté de cette page. Vérifiez le réseau, ou distribuez plutôt le fichier.
sets-title = Un jeu de données par étudiant
sets-hint = Chaque étudiant reçoit ses propres lectures, photos ou traces aux positions prévues, tirées sur une copie simulée de ce banc, dans un document par ailleurs semblable à celui-ci. Sont cachés dans chacun le retard t₀ à distance nulle et les erreurs des échelles, des raccords et des bases de temps, tirées d’après leurs incertitudes déclarées. La vitesse de la lumière est c₀ dans tous. Les lectures de ce cahier ne sont pas distribuées.
sets-protects = Les documents ne contiennent ni ces valeurs vraies ni ce dont elles sont tirées. Les nombres d’un voisin ne conviennent pas, et personne ne peut lire la réponse dans un fichier. Ils ne protègent ni contre une clé transmise, ni contre un travail fait par quelqu’un d’autre.
sets-form = Ce que reçoit chaque étudiant
sets-forms-typed = Des lectures saisies
sets-forms-photographs = Des photos de l’écran, à marquer
sets-forms-traces = Des traces enregistrées, à mesurer
sets-names = Noms, un par ligne, ou leur nombre
sets-make = Préparer les jeux de données
sets-making =
    { $n ->
        [one] Préparation du jeu de données…
       *[other] Préparation de { $n } jeux de données…
    }
sets-made =
    { $n ->
        [one] Le jeu de données est prêt. Téléchargez les deux fichiers : la clé n’est gardée nulle part ailleurs, et un jeu refait a d’autres lectures.
       *[other] { $n } jeux de données sont prêts. Téléchargez les deux fichiers : la clé n’est gardée nulle part ailleurs, et des jeux refaits ont d’autres lectures.
    }
sets-stopped = Arrêté. Aucun jeu de données n’a été préparé.
sets-no-photo = La photo du montage n’est pas conservée dans ce navigateur, et n’est dans aucun d’eux. Ajoutez-la de nouveau, puis recommencez.
sets-off_screen = Ligne { $row } : le retard ne tient pas sur l’écran simulé. Prévoyez-y une base de temps plus lente, ou déclarez un écran de 20 divisions au plus.
sets-too_late = Ligne { $row } : le retard dépasse 2 µs et ne tient pas dans un enregistrement simulé. Prévoyez des positions plus proches.
sets-position = Une position prévue est illisible. Corrigez-la ou retirez-la d’abord dans le plan de mesure.
sets-take = Télécharger les jeux de données (zip)
sets-take-key = Télécharger la clé
sets-key-left = Ces jeux de données ne sont plus dans cette page, et vous n’avez pas téléchargé leur clé. Sans elle, leurs valeurs vraies sont perdues.
sets-file = jeux-de-données
sets-key-file = clé
sets-number = qui a reçu le jeu de données { $number }
sets-error = { $name } : { $value }
sets-notes-typed = Ces lectures viennent d’un banc simulé. Elles ont été tirées pour { $who } et pour personne d’autre.
sets-notes-photographs = Ces photos montrent l’écran d’un banc simulé. Elles ont été tirées pour { $who } et pour personne d’autre. Acceptez ou corrigez sur chacune les marques proposées.
sets-notes-traces = Ces traces viennent d’un banc simulé. Elles ont été tirées pour { $who } et pour personne d’autre. Appuyez sur « Mesurer de nouveau » pour en tirer les retards.
posted-begun = Vous avez déjà commencé « { $title } » ici. Voici votre cahier, tel que vous l’avez laissé.
posted-others = Un cahier a déjà été commencé à partir de lui sur cet ordinateur. S’il est à vous, ouvrez-le sous « Cahiers ».
posted-anew = En commencer un nouveau
posted-asks = C’est un document distribué : ce qui est demandé figure sous « Rapport ».
posted-show-asked = Montrer ce qui est demandé
posted-refused = Le cahier de cette adresse ou de ce fichier n’a pas été ouvert : { $why }
posted-broken = Le lien est endommagé ou coupé. Copiez de nouveau le lien entier, là où vous l’avez reçu.
posted-too_long = Le lien dépasse { $most } octets. Demandez le document sous forme de fichier.
posted-too_large = Le lien se déploie en plus de { $most } octets. Demandez le document sous forme de fichier. Si vous ne savez pas qui a fait ce lien, ne l’ouvrez pas.
posted-cut = Le cahier contenu dans ce fichier HTML est endommagé. Téléchargez de nouveau le fichier.
posted-no_site = Cette page est un seul fichier, qui ne charge rien d’un site. Téléchargez le cahier, puis ouvrez le fichier.
posted-elsewhere = « { $path } » ne se trouve pas sur le même site que cette page. Une adresse n’ouvre que les cahiers du même site. Téléchargez le cahier, puis ouvrez le fichier.
posted-no_notebook = « { $path } » n’est pas un cahier : son nom doit finir par .zip ou .json.
posted-other_kind = Les cahiers sont des fichiers qui finissent par .zip ou .json. Collez un tableau de lectures dans une cellule des lectures ; ajoutez photos et traces sous « Retards ».
posted-not_there = « { $path } » n’a pas pu être chargé de ce site. Vérifiez le nom et le réseau.
handout-file = document
handout-made = Le document est prêt. Son empreinte est { $digest } : chaque cahier qui en est issu montre la même.
handout-digest = Empreinte du document distribué : { $digest }. C’est la même dans chaque cahier issu de ce document.
handout-tasks = De votre enseignant
handout-answer = Votre réponse
handout-answer-number = Votre réponse (un nombre)
handout-fixed = Fixé par le document distribué.
handout-fixed-rows =
    { $n ->
        [one] Fixé par le document distribué dans la ligne qui en vient : { $columns }.
       *[other] Fixé par le document distribué dans les { $n } lignes qui en viennent : { $columns }.
    }
handin-title = Travail à remettre
handin-complete = Tout ce qui a été demandé est là.
handin-missing =
    { $n ->
        [one] Une chose demandée manque :
       *[other] { $n } choses demandées manquent :
    }
handin-lacks =
    { $piece ->
        [cautions] Précautions : lisez-les et saisissez-y votre nom
        [readings] Lectures : lignes retenues, au moins { $rows }
        [result] Résultat : il n’y en a pas encore
       *[other] { $name } : rien de saisi pour l’instant
    }
handin-answer = Réponse : { $question }
handin-take = Télécharger le fichier à remettre
handin-take-incomplete = Télécharger le fichier, incomplet
handin-hint = Un seul fichier, nommé par groupe, numéro d’étudiant, noms et date. Rien n’est envoyé : remettez-le de la façon demandée par votre enseignant.
handin-fixed = Fixé par le document distribué : { $pieces }. Vous remplissez tout le reste.
handin-nothing-fixed = Rien n’est fixé : tout le cahier est à vous.
columns-answers-question = question
columns-answers-answer = réponse
tables-answers = Questions et réponses
edit-no_task = Il n’y a pas de question numéro { $n }. La réponse a été laissée de côté.
edit-handed_out = Ceci appartient au document distribué lui-même. Seul son auteur peut le modifier, dans le cahier dont il est issu.
edit-undo_stops = Les modifications antérieures viennent du document distribué ou précèdent le sceau. L’annulation s’arrête ici.
edit-fixed =
    { $piece ->
        [title] Le titre est fixé par le document distribué. Il est resté inchangé.
        [source] Le chariot et la source sont fixés par le document distribué. Ils sont restés inchangés.
        [instruments] Les instruments, les câbles et le déclenchement sont fixés par le document distribué. Ils sont restés inchangés.
        [rails] Les rails sont fixés par le document distribué. Ils sont restés inchangés.
        [screen] L’écran et la lecture des fronts sont fixés par le document distribué. Ils sont restés inchangés.
        [time_bases] Les bases de temps sont fixées par le document distribué. Elles sont restées inchangées.
        [air] L’air est fixé par le document distribué. Il est resté inchangé.
        [positions] Les positions sont fixées par le document distribué. Elles sont restées inchangées.
        [evidence] Les photos et les traces de cette ligne sont fixées par le document distribué. Elles sont restées inchangées.
        [line] Le choix des lignes écartées est fixé par le document distribué. Il est resté inchangé.
        [uncertainty] Les autres composantes de l’incertitude sont fixées par le document distribué. Elles sont restées inchangées.
        [readings] Les lectures sont fixées par le document distribué. Elles sont restées inchangées.
        [result] La façon d’énoncer l’incertitude du résultat est fixée par le document distribué. Elle est restée inchangée.
        [aim] Le but est fixé par le document distribué. Il est resté inchangé.
        [method] La méthode est fixée par le document distribué. Elle est restée inchangée.
        [discussion] La discussion est fixée par le document distribué. Elle est restée inchangée.
        [people] Les noms sont fixés par le document distribué. Ils sont restés inchangés.
        [student_number] Le numéro d’étudiant est fixé par le document distribué. Il est resté inchangé.
        [group] Le groupe est fixé par le document distribué. Il est resté inchangé.
        [date] La date est fixée par le document distribué. Elle est restée inchangée.
        [answers] Les réponses sont fixées par le document distribué. Elles sont restées inchangées.
       *[other] Cette partie est fixée par le document distribué. Elle est restée inchangée.
    }

## Ce qu’un enseignant dit d’un cahier remis

feedback-title = Commentaires sur ce que vous avez remis
feedback-teacher = Votre enseignant
feedback-about = { $from }, { $date }, sur ce cahier tel qu’il a été remis, avec { $n } entrées dans son historique. Ces commentaires ne font pas partie de votre rapport.
feedback-since =
    { $n ->
        [one] Depuis, { $n } entrée s’est ajoutée : un commentaire peut porter sur quelque chose qui a changé.
       *[other] Depuis, { $n } entrées se sont ajoutées : un commentaire peut porter sur quelque chose qui a changé.
    }
feedback-mark = Note : { $mark }
feedback-question-gone = une question qui n’existe plus
feedback-remove = Retirer ces commentaires
feedback-removed = Les commentaires ont été retirés.
feedback-replaced = Ces commentaires remplacent ceux que { $from } avait faits avant.
feedback-opened =
    { $n ->
        [0] Voici ce que dit votre enseignant.
        [one] Le commentaire figure aussi à côté de ce dont il parle.
       *[other] Les { $n } commentaires figurent aussi à côté de ce dont ils parlent.
    }
feedback-nowhere = Ce sont des commentaires sur le cahier « { $title } » ({ $who }), remis avec { $n } entrées dans son historique. Ce cahier n’est pas dans ce navigateur. Ouvrez d’abord le fichier que vous avez remis, puis celui-ci de nouveau. S’il est parmi les cahiers supprimés, récupérez-le d’abord.
feedback-damaged = Les commentaires de « { $name } » sont endommagés. Téléchargez de nouveau le fichier, ou redemandez-le.
feedback-later = Les commentaires de « { $name } » ont été écrits avec une version plus récente de cette page. Ouvrez-les avec cette version.
feedback-too_large = Les commentaires pour « { $name } » dépassent ce que cette page accepte : { $comments } commentaires au plus, { $kib } Kio en tout. Raccourcissez-les, ou demandez-en de plus courts.

## Quitter un ordinateur

leave-computer = Cet ordinateur
leave-computers-own = le mien
leave-computers-shared = partagé avec d’autres
leave-hint = Sur un ordinateur partagé, la page propose de tout effacer une fois le travail remis, et une nouvelle fenêtre n’ouvre d’elle-même le cahier de personne.
leave-ask = Tout effacer de cet ordinateur
leave-title = Tout effacer de cet ordinateur ?
leave-what =
    { $n ->
        [one] { $n } cahier sera effacé de ce navigateur, avec toutes les photos, les fichiers de traces, les commentaires et les réglages de cette page. Cela ne peut pas être annulé.
       *[other] { $n } cahiers seront effacés de ce navigateur, avec toutes les photos, les fichiers de traces, les commentaires et les réglages de cette page. Cela ne peut pas être annulé.
    }
leave-before = Vérifiez d’abord que le fichier à remettre est là où il vous le faut, et fermez les autres fenêtres de cette page. Les fichiers téléchargés et la liste des pages visitées du navigateur restent : la page ne peut pas les effacer.
leave-keep = Tout garder
leave-remove = Tout effacer
leave-windows = Rien n’a été effacé : une autre fenêtre de cette page est ouverte, et enregistrerait de nouveau son cahier. Fermez-la d’abord.
